import type { Meter } from '../core/reading/types.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

/** Adds or changes a meter; `expectedVersion` 0 for a new one. */
export async function saveMeter(
  context: ActionContext,
  input: { readonly meter: Meter; readonly expectedVersion: number },
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveMeter');
  const { meter, expectedVersion } = input;
  return saveCatalogEntry(context, 'saveMeter', { kind: 'meter', id: meter.id, body: meter, expectedVersion });
}
