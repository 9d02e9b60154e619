import { useQueryClient } from '@tanstack/react-query';
import type { SwabLot } from '../../../core/reading/types.ts';
import { sendUncompared } from '../../data/checkQueries.ts';
import { useSend } from '../../data/useSend.ts';
import { OpenForm } from '../../parts/OpenForm.tsx';
import { ReasonForm } from '../../parts/ReasonForm.tsx';

/** A lot that nobody compared goes into use with a reason, which each of its readings carries until it is compared. */
export function GoOnForm({ lot }: { readonly lot: SwabLot }) {
  const client = useQueryClient();
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
                await sendUncompared(lot.id, reason);
                close();
                await client.invalidateQueries({ queryKey: ['checks'] });
              })
            }
            onLeave={() => close()}
          />
        )}
      />
    </div>
  );
}
