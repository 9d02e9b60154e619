import { useQueryClient } from '@tanstack/react-query';
import type { MeterCheck } from '../../../core/checks/meterCheck.ts';
import { CHECKED_BY_WORDS } from '../../../core/checks/meterCheck.ts';
import { voidReading } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatDate, formatNumber, formatShortClock } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';
import { MeterCheckForm } from './MeterCheckForm.tsx';
import { MeterCheckPlanForm } from './MeterCheckPlanForm.tsx';
import { OverrideLine } from './OverrideLine.tsx';
import { type CheckedMeter, sayCheckPlan, sayLastCheck, sayOutcome } from './sayMeterChecks.ts';

interface MeterCheckBlockProps {
  readonly checked: CheckedMeter;
  readonly mayChange: boolean;
  readonly mayDecide: boolean;
}

/** The meter by itself: its last check, when the next is due, and what to do when one did not pass. */
export function MeterCheckBlock({ checked, mayChange, mayDecide }: MeterCheckBlockProps) {
  const { meter, entry, due, isStopped } = checked;
  return (
    <>
      <p data-meter-check>
        {sayLastCheck(checked)} {sayCheckPlan(entry?.plan)} <span className={due.isDue ? 'unknown' : undefined}>{due.says}</span>
      </p>
      {isStopped && <StoppedMeter checked={checked} mayDecide={mayDecide} />}
      <div className="meter-actions">
        <OpenForm
          label="Note a check of the meter"
          about={meter.name}
          form={(close) => <MeterCheckForm checked={checked} close={close} />}
        />
        {mayChange && (
          <OpenForm
            label={entry ? 'Change how often it is checked' : 'Set how often it is checked'}
            about={meter.name}
            form={(close) => <MeterCheckPlanForm meter={meter} entry={entry} close={close} />}
          />
        )}
      </div>
      <ChecksTable checked={checked} mayVoid={mayChange} />
    </>
  );
}

function StoppedMeter({ checked: { meter, last, override }, mayDecide }: Pick<MeterCheckBlockProps, 'checked' | 'mayDecide'>) {
  if (!last) return null;
  return (
    <div className="ruled-block" data-meter-stopped>
      <p>
        <strong>Run today without swabs.</strong> The check of {meter.name} on {formatDate(last.takenAt)}, {formatShortClock(last.takenAt)},
        did not pass. A reading of it, with any lot, is kept and not counted until a check passes. A visit without a reading is complete.
      </p>
      <ol>
        <li>Clean the meter and its check device as their leaflets say, and let both come to the temperature of the room.</li>
        <li>Check it once more and note that too.</li>
        <li>Still not passed: use another meter that passed, and ask whoever services this one.</li>
      </ol>
      <OverrideLine
        controlId={last.id}
        although={`although the check of ${meter.name} did not pass`}
        overrides={override ? [override] : []}
        mayDecide={mayDecide}
      />
    </div>
  );
}

function ChecksTable({ checked: { meter, checks }, mayVoid }: { readonly checked: CheckedMeter; readonly mayVoid: boolean }) {
  if (checks.length === 0) return null;
  return (
    <details>
      <summary>Show checks of {meter.name} as table</summary>
      <table className="stacks">
        <thead>
          <tr>
            <th scope="col">Checked</th>
            <th scope="col">By means of</th>
            <th scope="col">RLU</th>
            <th scope="col">Outcome</th>
            <th scope="col">Noted</th>
            <th scope="col">By</th>
            <th scope="col">
              <span className="sr-only">Correct</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {[...checks].reverse().map((check) => (
            <tr key={check.id}>
              <th scope="row">
                {formatDate(check.takenAt)}, {formatShortClock(check.takenAt)}
              </th>
              <td data-label="By means of">{CHECKED_BY_WORDS[check.note.checkedBy]}</td>
              <td data-label="RLU">{check.rlu === null ? 'no number' : formatNumber(check.rlu)}</td>
              <td data-label="Outcome">{check.state === 'void' ? `not counted, ${check.voidReason}` : sayOutcome(check)}</td>
              <td data-label="Noted">{sayNoted(check)}</td>
              <td data-label="By">{check.operator ?? 'not noted'}</td>
              <td>{mayVoid && check.state !== 'void' && <VoidCheck check={check} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <a href="/api/meter-checks.csv" download="meter-checks.csv">
          All checks of meters as a table for a spreadsheet (CSV)
        </a>
      </p>
    </details>
  );
}

const sayNoted = ({ note: { temperatureDegC, words } }: MeterCheck): string =>
  [temperatureDegC === undefined ? '' : `${formatNumber(temperatureDegC)} °C`, words ?? ''].filter(Boolean).join(', ') || 'nothing';

function VoidCheck({ check }: { readonly check: MeterCheck }) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  return (
    <OpenForm
      label="noted by mistake"
      about={`the check of ${formatDate(check.takenAt)}`}
      form={(close) => (
        <ReasonForm
          about={`The check of ${formatDate(check.takenAt)} was noted by mistake`}
          hint="it stays on the record and is not counted"
          saveWords="Do not count it"
          problem={problem}
          onGive={(reason) =>
            void send(async () => {
              await voidReading(check.id, check.version, reason);
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
