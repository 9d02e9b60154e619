import { AppError } from '../api/errors.ts';
import { MOST_PACKS_SIGNED } from '../core/regimen/signatureCover.ts';
import { listCatalog } from '../store/read/catalog.ts';
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
  if (order.until !== undefined && requireDate('The last day of the order', order.until) < order.date)
    throw new AppError('INPUT_INVALID', 'The last day of the order lies before its date.');
  if (order.packs !== undefined && !(Number.isInteger(order.packs) && order.packs >= 1 && order.packs <= MOST_PACKS_SIGNED))
    throw new AppError('INPUT_INVALID', `packs: a whole number from 1 to ${MOST_PACKS_SIGNED} is needed, not ${order.packs}.`);
  await requireItems(context, order.shelfItemIds);
  const body: StandingOrder = { ...order, signedBy: context.actor.name };
  return saveCatalogEntry(context, 'saveStandingOrder', { kind: 'standing-order', id, body, expectedVersion });
}

async function requireItems({ db, scope }: ActionContext, shelfItemIds: readonly string[]): Promise<void> {
  if (shelfItemIds.length === 0) throw new AppError('INPUT_INVALID', 'The order names no item.');
  const shelf = new Set((await listCatalog(db, scope, 'shelf-item')).map(({ id }) => id));
  const missing = shelfItemIds.find((id) => !shelf.has(id));
  if (missing !== undefined) throw new AppError('SHELF_ITEM_NOT_FOUND', `There is no item ${missing} on the shelf.`);
}
