import type { SwabLot } from '../core/reading/types.ts';
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
  const { lot, expectedVersion } = input;
  requireDate('The last day of the lot', lot.expiresOn);
  return saveCatalogEntry(context, 'saveLot', { kind: 'lot', id: lot.id, body: lot, expectedVersion });
}
