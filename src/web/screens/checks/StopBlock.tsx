import type { ChecksView } from '../../../api/swabChecks.ts';
import type { ControlStop } from '../../../core/checks/listStops.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import { formatDate, formatShortClock } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { OverrideLine } from './OverrideLine.tsx';
import { ReadingsBefore } from './ReadingsBefore.tsx';
import { ResolveForm } from './ResolveForm.tsx';
import { findNewest, type MeterToday } from './sayChecks.ts';
import { sayDone, sayLooksBack } from './stopWords.ts';

interface StopBlockProps {
  readonly stop: ControlStop;
  readonly today: MeterToday;
  readonly view: ChecksView;
  readonly mayDecide: boolean;
}

/** What fired, what to do, and what was done: to go without swabs first, the override last. */
export function StopBlock({ stop, today, view, mayDecide }: StopBlockProps) {
  const outId = stop.out[0].control.id;
  const lotName = view.lots.find(({ id }) => id === stop.lotId)?.name ?? 'a lot that is not on record';
  return (
    <div className="ruled-block" data-stopped>
      {stop.state === 'not-recorded' ? <InLineAgain stop={stop} /> : <Stopped stop={stop} today={today} view={view} lotName={lotName} />}
      <ReadingsBefore outId={outId} mayDecide={mayDecide} />
      {stop.state === 'stopped' && (
        <OverrideLine
          controlId={stop.out.at(-1)?.control.id ?? ''}
          although="although the control is out of limits"
          overrides={view.overrides}
          mayDecide={mayDecide}
        />
      )}
    </div>
  );
}

function Stopped({ stop, today, view, lotName }: Omit<StopBlockProps, 'mayDecide'> & { readonly lotName: string }) {
  const { resolution } = stop;
  const isPutAway = stop.state === 'put-away' && resolution !== undefined;
  const other = isPutAway ? undefined : findOtherLot(stop, today);
  const otherName = view.lots.find(({ id }) => id === other?.lotId)?.name;
  return (
    <>
      <p>
        <strong>{isPutAway ? `Lot ${lotName} is put away.` : 'Run today without swabs.'}</strong> A reading of {today.meter.name} with lot{' '}
        {lotName} is kept and not counted until a control of it is in line again. A visit without a reading is complete.
      </p>
      <p>{saySeen(stop)}</p>
      {isPutAway ? (
        <p>
          What was done: {sayDone(resolution)} ({resolution.by}, {formatDate(resolution.at)}).
        </p>
      ) : (
        <ol>
          <li>Look at the solution: its date, a bottle that stood open, in the sun or in the fridge until now.</li>
          <li>Take one more control, from a new bottle, and say below what was done.</li>
          <li>Still out: take one with another lot. If that one is in line, use it; if not, it is the meter.</li>
        </ol>
      )}
      {other && (
        <OpenForm
          label={`Lot ${otherName} was opened in its place`}
          form={(close) => <ResolveForm outId={stop.out[0].control.id} controlId={other.control.id} answer="new-lot" close={close} />}
        />
      )}
    </>
  );
}

/** Another lot of this meter with a control in line since. */
function findOtherLot({ lotId, out }: ControlStop, { judged }: MeterToday) {
  for (const lot of judged) {
    const newest = lot.lotId === lotId ? undefined : findNewest(judged, lot.lotId);
    const isInLine = newest?.state === 'in-control' || newest?.state === 'warning';
    if (newest && isInLine && newest.control.takenAt > out[0].control.takenAt) return { lotId: lot.lotId, control: newest.control };
  }
  return undefined;
}

/** "Out of limits since 4 March 2026, 08:15: 4,200 RLU, control rule 2 of 6: one far too high." */
function saySeen({ out }: ControlStop): string {
  const [{ control, says, rule }] = out;
  const since = `Out of limits since ${formatDate(control.takenAt)}, ${formatShortClock(control.takenAt)}: ${sayRlu(control.rlu, control.bound)}, ${says}.`;
  return [since, sayLooksBack(rule)].filter(Boolean).join(' ');
}

function InLineAgain({ stop }: { readonly stop: ControlStop }) {
  const [{ control }] = stop.out;
  return (
    <>
      <p>
        <strong>In line again; what was done is not recorded.</strong> The control of {formatDate(control.takenAt)},{' '}
        {formatShortClock(control.takenAt)}, was out of limits. Readings count again, with caution until it is noted what was done.
      </p>
      <ResolveForm outId={control.id} />
    </>
  );
}
