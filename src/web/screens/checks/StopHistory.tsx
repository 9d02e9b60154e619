import { useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import type { StopReadings } from '../../../core/checks/control.ts';
import type { ControlStop } from '../../../core/checks/listStops.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import { formatDate, formatShortClock, plural } from '../../format.ts';
import { ReadingsBefore, sayStanding } from './ReadingsBefore.tsx';
import type { MeterToday } from './sayChecks.ts';
import { sayDone } from './stopWords.ts';

interface StopHistoryProps {
  readonly today: MeterToday;
  readonly view: ChecksView;
  readonly mayDecide: boolean;
}

/** Every stop of the meter: what fired, what was done, the control in line that showed it, and the readings before it. */
export function StopHistory({ today, view, mayDecide }: StopHistoryProps) {
  const newestFirst = [...today.stops].sort((a, b) => (a.out[0].control.takenAt < b.out[0].control.takenAt ? 1 : -1));
  const orphans = listOrphans(today, view);
  const count = newestFirst.length + orphans.length;
  if (count === 0) return null;
  return (
    <details className="stop-history">
      <summary>
        Stops of {today.meter.name}: {plural(count, 'stop')} on record
      </summary>
      <ul className="control-list">
        {newestFirst.map((stop) => (
          <li key={stop.out[0].control.id} data-stop={stop.state}>
            <p>{sayStop(stop, today, view)}</p>
            <Before outId={stop.out[0].control.id} view={view} mayDecide={mayDecide} />
          </li>
        ))}
        {orphans.map((question) => (
          <li key={question.outId}>
            <p>
              The control of {formatDate(question.until)}, {formatShortClock(question.until)}, began a stop and no longer does: it was noted
              by mistake, or is held against another target since.
            </p>
            <Before outId={question.outId} view={view} mayDecide={mayDecide} />
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What was said of readings before a stop that is none any more still holds, so it must be in sight. */
function listOrphans({ meter, stops }: MeterToday, { questions }: ChecksView): readonly StopReadings[] {
  const begun = new Set(stops.map(({ out }) => out[0].control.id));
  return questions.map(({ question }) => question).filter(({ meterId, outId }) => meterId === meter.id && !begun.has(outId));
}

function sayStop({ out, lotId, endedBy, resolution, state }: ControlStop, { judged }: MeterToday, view: ChecksView): string {
  const [{ control, says }] = out;
  const lotName = (id: string) => view.lots.find((lot) => lot.id === id)?.name ?? 'not on record';
  const when = (at: string) => `${formatDate(at)}, ${formatShortClock(at)}`;
  const began = `${when(control.takenAt)}, lot ${lotName(lotId)}: ${sayRlu(control.rlu, control.bound)}, ${says}.`;
  const more = out.length > 1 ? ` ${plural(out.length - 1, 'more control')} out of limits after it.` : '';
  const ended = endedBy
    ? ` In line again ${when(endedBy.control.takenAt)}: ${sayRlu(endedBy.control.rlu, endedBy.control.bound)}.`
    : ' Not in line since.';
  if (!resolution) return `${began}${more}${ended} ${state === 'stopped' ? '' : 'What was done is not recorded.'}`.trim();
  const shown = judged.flatMap(({ controls }) => controls).find((one) => one.control.id === resolution.controlId)?.control;
  const by = shown && shown.lotId !== lotId ? ` Shown by the control of lot ${lotName(shown.lotId)}, ${when(shown.takenAt)}.` : '';
  return `${began}${more}${ended} Resolved: ${sayDone(resolution)} (${resolution.by}, ${when(resolution.at)}).${by}`;
}

/** What was said of the readings before it; they are asked for when somebody wants to see them. */
function Before({ outId, view, mayDecide }: { readonly outId: string } & Pick<StopHistoryProps, 'view' | 'mayDecide'>) {
  const [isOpen, setOpen] = useState(false);
  const last = view.questions.find(({ question }) => question.outId === outId)?.question.decisions.at(-1);
  if (isOpen) return <ReadingsBefore outId={outId} mayDecide={mayDecide} />;
  return (
    <>
      <p>Readings since the last control in line: {last ? lowerFirst(sayStanding(last)) : 'nothing was said of them.'}</p>
      <button type="button" className="link" onClick={() => setOpen(true)}>
        Look at them
      </button>
    </>
  );
}

const lowerFirst = (sentence: string): string => sentence.charAt(0).toLowerCase() + sentence.slice(1);
