import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { ChecksView } from '../../../api/swabChecks.ts';
import { type JudgedControl, judgeControls } from '../../../core/checks/judgeControls.ts';
import { overrideStop, voidReading } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatShortClock } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { SectionHead } from '../visit/SectionHead.tsx';
import { ControlForm } from './ControlForm.tsx';
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
      {newest?.state === 'out' && (
        <Stopped control={newest} lotName={name} view={view} meterName={today.meter.name} mayDecide={mayDecide} />
      )}
      <ControlForm today={today} view={view} lotId={lotId} onLot={setLotId} />
      <LastControls view={view} meterId={today.meter.id} mayVoid={mayVoid} />
    </section>
  );
}

interface StoppedProps {
  readonly control: JudgedControl;
  readonly lotName: string;
  readonly meterName: string;
  readonly view: ChecksView;
  readonly mayDecide: boolean;
}

/** What to do while a control is out: to go without swabs first, and the override last. */
function Stopped({ control: { control }, lotName, meterName, view, mayDecide }: StoppedProps) {
  const override = view.overrides.find(({ controlId }) => controlId === control.id);
  return (
    <div className="ruled-block" data-stopped>
      <p>
        <strong>Run today without swabs.</strong> A reading of {meterName} with lot {lotName} is kept and not counted until a control is in
        line again. A visit without a reading is complete.
      </p>
      <ol>
        <li>Look at the solution: its date, a bottle that stood open, in the sun or in the fridge until now.</li>
        <li>Take one more control, from a new bottle.</li>
        <li>Still out: take one with another lot. If that one is in line, use it; if not, it is the meter.</li>
      </ol>
      {override ? (
        <p>
          Today's readings count all the same: {override.by}, {formatShortClock(override.at)}: {override.reason}
        </p>
      ) : (
        <OverrideForm controlId={control.id} mayDecide={mayDecide} />
      )}
    </div>
  );
}

function OverrideForm({ controlId, mayDecide }: { readonly controlId: string; readonly mayDecide: boolean }) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  if (!mayDecide) return <p className="form-note">A hygienist or dentist may let readings count today, with a reason.</p>;
  return (
    <OpenForm
      label="Let today's readings count all the same"
      form={(close) => (
        <ReasonForm
          about="Let today's readings count although the control is out of limits"
          hint="kept on the record, and on each reading taken today"
          saveWords="Let them count today"
          problem={problem}
          onGive={(reason) =>
            void send(async () => {
              await overrideStop(controlId, reason);
              await client.invalidateQueries({ queryKey: ['checks'] });
              close('Noted.');
            })
          }
          onLeave={() => close()}
        />
      )}
    />
  );
}

const SHOWN = 5;

/** The newest controls, so that one noted by mistake can be said to be one. */
function LastControls({ view, meterId, mayVoid }: { readonly view: ChecksView; readonly meterId: string; readonly mayVoid: boolean }) {
  const plans = view.plans.map(({ plan }) => plan);
  const ofMeter = judgeControls(
    view.controls.filter((control) => control.meterId === meterId),
    plans,
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
