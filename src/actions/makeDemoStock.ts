import { addDays } from '../content/demo/days.ts';
import { DEMO_HANDED_OUT, demoDeliveries } from '../content/demo/stock.ts';
import type { VisitInput } from '../core/visit/types.ts';
import { findLots } from '../store/read/stock.ts';
import type { ActionContext } from './context.ts';
import { dispenseItem } from './dispenseItem.ts';
import type { DemoTeam } from './makeDemoVisit.ts';
import { receiveStock } from './receiveStock.ts';

/** The deliveries of the invented practice, each on its day. */
export function listDemoStock(today: string): readonly { readonly at: string; readonly make: (team: DemoTeam) => Promise<void> }[] {
  return demoDeliveries.map(({ cameOn, lastDay, ...delivery }) => {
    const onDate = addDays(today, cameOn);
    const expiry = lastDay === null ? null : addDays(today, lastDay);
    return {
      at: `${onDate}T08:05:00.000Z`,
      make: async (team) => {
        await receiveStock(team.lead, { ...delivery, expiry, today: onDate });
      },
    };
  });
}

/** A pack of what was agreed goes home, once the practice counts it. */
export async function giveWhatIsAgreed(
  context: ActionContext,
  visitId: string,
  { agreed, onDate }: Pick<VisitInput['visit'], 'agreed' | 'onDate'>,
): Promise<void> {
  for (const shelfItemId of DEMO_HANDED_OUT) {
    if (agreed?.items?.[shelfItemId] !== 'agreed' || !(await findLots(context.db, context.scope, shelfItemId))) continue;
    const facts = { place: 'in-plan', bars: [], isForDentist: false, isTurnedDown: false } as const;
    await dispenseItem(context, { visitId, shelfItemId, today: onDate, facts });
  }
}
