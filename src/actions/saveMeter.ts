import type { Meter } from '../core/reading/types.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

/**
 * Adds or changes a meter; `expectedVersion` 0 for a new one. What its studies found is not typed but reported, so it stays as it is
 * stored whatever is sent here.
 */
export async function saveMeter(
  context: ActionContext,
  input: { readonly meter: Meter; readonly expectedVersion: number },
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveMeter');
  const { expectedVersion } = input;
  const { own: _, ...described } = input.meter;
  const stored = await findCatalogEntry(context.db, context.scope, 'meter', described.id);
  // Of another version, it is not saved at all.
  const meter: Meter = stored?.body.own === undefined ? described : { ...described, own: stored.body.own };
  return saveCatalogEntry(context, 'saveMeter', { kind: 'meter', id: meter.id, body: meter, expectedVersion });
}
