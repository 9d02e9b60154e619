import { useQueryClient } from '@tanstack/react-query';
import type { StopOverride } from '../../../core/checks/control.ts';
import { overrideStop } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { formatShortClock } from '../../format.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';

interface OverrideLineProps {
  /** The control that is out of limits, or the check of a meter that did not pass. */
  readonly controlId: string;
  /** "although the control is out of limits" */
  readonly although: string;
  readonly overrides: readonly StopOverride[];
  readonly mayDecide: boolean;
}

/** Who has let readings count today all the same and why, or the way to do so. */
export function OverrideLine({ controlId, although, overrides, mayDecide }: OverrideLineProps) {
  const client = useQueryClient();
  const { send, problem } = useSend();
  const override = overrides.find((one) => one.controlId === controlId);
  if (override)
    return (
      <p>
        Today's readings count all the same: {override.by}, {formatShortClock(override.at)}: {override.reason}
      </p>
    );
  if (!mayDecide) return <p className="form-note">A hygienist or dentist may let readings count today, with a reason.</p>;
  return (
    <OpenForm
      label="Let today's readings count all the same"
      about={although}
      form={(close) => (
        <ReasonForm
          about={`Let today's readings count ${although}`}
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
