import { AppError } from '../api/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

/** From now on nobody signs on it. What was signed on it before stays signed. */
export async function withdrawStandingOrder(
  context: ActionContext,
  { id, expectedVersion }: { readonly id: string; readonly expectedVersion: number },
): Promise<{ version: number }> {
  const { db, scope, actor, now } = context;
  requireRight(actor, 'withdrawStandingOrder');
  const order = (await findCatalogEntry(db, scope, 'standing-order', id))?.body;
  if (!order) throw new AppError('STANDING_ORDER_NOT_FOUND', 'There is no such standing order.');
  const body = { ...order, withdrawn: true, withdrawnBy: { name: actor.name, at: now() } };
  return saveCatalogEntry(context, 'withdrawStandingOrder', { kind: 'standing-order', id, body, expectedVersion });
}
