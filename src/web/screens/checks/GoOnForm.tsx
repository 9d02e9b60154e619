import type { SwabLot } from '../../../core/reading/types.ts';
import { sendUncompared } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';

interface GoOnFormProps {
  readonly lot: SwabLot;
  /** Called with the lot as it stands then. */
  readonly onKept: (lot: SwabLot) => void | Promise<void>;
}

/** A lot that nobody compared goes into use with a reason, which each of its readings carries until it is compared. */
export function GoOnForm({ lot, onKept }: GoOnFormProps) {
  const { send, problem } = useSend();
  return (
    <div>
      <OpenForm
        label="Use it without"
        about={`a comparison, lot ${lot.name}`}
        form={(close) => (
          <ReasonForm
            about={`Use lot ${lot.name} without a comparison`}
            hint="kept on each reading with this lot until it is compared"
            saveWords="Use it without"
            problem={problem}
            onGive={(reason) =>
              void send(async () => {
                const { lot: now } = await sendUncompared(lot.id, reason);
                close();
                await onKept(now);
              })
            }
            onLeave={() => close()}
          />
        )}
      />
    </div>
  );
}
