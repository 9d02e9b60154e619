import type { SwabLot } from '../core/reading/types.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { requireDate } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

/** Adds or changes a lot of swabs; `expectedVersion` 0 for a new one. */
export async function saveLot(
  context: ActionContext,
  input: { readonly lot: SwabLot; readonly expectedVersion: number },
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveLot');
  const { expectedVersion } = input;
  // Whether it was compared is not typed: it stays as it is stored whatever is sent here.
  const { compared: _, uncompared: __, ...described } = input.lot;
  const stored = (await findCatalogEntry(context.db, context.scope, 'lot', described.id))?.body;
  const { compared, uncompared } = stored ?? {};
  const lot: SwabLot = { ...described, ...(compared && { compared }), ...(uncompared && { uncompared }) };
  requireDate('The last day of the lot', lot.expiresOn);
  return saveCatalogEntry(context, 'saveLot', { kind: 'lot', id: lot.id, body: lot, expectedVersion });
}
