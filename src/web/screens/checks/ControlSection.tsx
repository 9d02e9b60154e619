import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import { type JudgedControl, judgeControls } from '../../../core/checks/judgeControls.ts';
import { voidReading } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatShortClock } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { ControlForm } from './ControlForm.tsx';
import { StopBlock } from './StopBlock.tsx';
import { StopHistory } from './StopHistory.tsx';
import { findNewest, type MeterToday, sayJudged } from './sayChecks.ts';

interface ControlSectionProps {
  readonly today: MeterToday;
  readonly view: ChecksView;
  readonly mayDecide: boolean;
  readonly mayVoid: boolean;
}

/** Today's control of one meter: what is due, the number, the answer, and what to do. */
export function ControlSection({ today, view, mayDecide, mayVoid }: ControlSectionProps) {
  const [lotId, setLotId] = useState(today.lot?.id);
  const newest = findNewest(today.judged, lotId);
  const lot = today.judged.find((judged) => judged.lotId === lotId);
  const last = today.stops.findLast((one) => one.lotId === lotId);
  const stop = last?.state === 'resolved' ? undefined : last;
  const name = view.lots.find(({ id }) => id === lotId)?.name ?? 'no lot';
  return (
    <section aria-label="Today's control">
      <SectionHead title={`Today's control: ${today.meter.name}`} number={1} />
      <p className={today.isDue ? 'unknown' : undefined}>{today.dueSays}</p>
      <div aria-live="polite">
        {newest && (
          <p className="opening" data-answer>
            <strong>{sayJudged(newest, lot?.waitsFor ?? '')}</strong> The last control, {formatDate(newest.control.takenAt)},{' '}
            {formatShortClock(newest.control.takenAt)}, lot {name}.
          </p>
        )}
      </div>
      {stop && <StopBlock key={stop.out[0].control.id} stop={stop} today={today} view={view} mayDecide={mayDecide} />}
      <ControlForm
        today={today}
        view={view}
        lotId={lotId}
        onLot={setLotId}
        isStopped={today.stops.some(({ state }) => state === 'stopped')}
      />
      <LastControls view={view} meterId={today.meter.id} mayVoid={mayVoid} />
      <StopHistory today={today} view={view} mayDecide={mayDecide} />
    </section>
  );
}

const SHOWN = 5;

/** The newest controls, so that one noted by mistake can be said to be one. */
function LastControls({ view, meterId, mayVoid }: { readonly view: ChecksView; readonly meterId: string; readonly mayVoid: boolean }) {
  const plans = view.plans.map(({ plan }) => plan);
  const ofMeter = judgeControls(
    view.controls.filter((control) => control.meterId === meterId),
    plans,
    view.resolutions,
  ).flatMap((lot) => lot.controls.map((judged) => ({ ...judged, waitsFor: lot.waitsFor })));
  const last = ofMeter.sort((a, b) => (a.control.takenAt < b.control.takenAt ? 1 : -1)).slice(0, SHOWN);
  if (last.length === 0) return null;
  return (
    <>
      <h3>Last controls</h3>
      <ul className="control-list">
        {last.map((judged) => (
          <li key={judged.control.id}>
            <span>
              {formatDate(judged.control.takenAt)}, {formatShortClock(judged.control.takenAt)}: {sayJudged(judged, judged.waitsFor)}{' '}
              <span className="side-note">
                lot {view.lots.find(({ id }) => id === judged.control.lotId)?.name}, {judged.control.operator ?? 'taker not noted'}
              </span>
            </span>{' '}
            {mayVoid && judged.state !== 'void' && <VoidControl judged={judged} />}
          </li>
        ))}
      </ul>
    </>
  );
}

function VoidControl({ judged: { control } }: { readonly judged: JudgedControl }) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  return (
    <OpenForm
      label="noted by mistake"
      about={`${control.rlu} of ${formatDate(control.takenAt)}`}
      form={(close) => (
        <ReasonForm
          about={`The control of ${formatDate(control.takenAt)} was noted by mistake`}
          hint="the number stays, hollow, and is not counted"
          saveWords="Do not count it"
          problem={problem}
          onGive={(reason) =>
            void send(async () => {
              await voidReading(control.id, control.version, reason);
              await client.invalidateQueries({ queryKey: ['checks'] });
              close();
            })
          }
          onLeave={() => close()}
        />
      )}
    />
  );
}
