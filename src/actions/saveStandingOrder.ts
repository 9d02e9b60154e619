import type { StandingOrder } from '../store/storedJson.ts';
import { requireDate, requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface SaveStandingOrderInput {
  readonly id: string;
  readonly order: Omit<StandingOrder, 'signedBy'>;
  /** Version last seen, 0 for a new order. */
  readonly expectedVersion: number;
}

/** A dentist names items that may be released in his or her name from a date on. */
export async function saveStandingOrder(
  context: ActionContext,
  { id, order, expectedVersion }: SaveStandingOrderInput,
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveStandingOrder');
  requireText('The name of the order', order.name);
  requireDate('The date of the order', order.date);
  const body: StandingOrder = { ...order, signedBy: context.actor.name };
  return saveCatalogEntry(context, 'saveStandingOrder', { kind: 'standing-order', id, body, expectedVersion });
}
