import { AppError } from '../api/errors.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import type { ActionContext } from './context.ts';
import { hasRole, requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface SaveShelfItemInput {
  readonly item: ShelfItem;
  /** Version last seen, 0 for a new item. */
  readonly expectedVersion: number;
}

/** Adds or changes an item of the shelf. Only a dentist may let an item go that so far waited for a signature. */
export async function saveShelfItem(context: ActionContext, { item, expectedVersion }: SaveShelfItemInput): Promise<{ version: number }> {
  requireRight(context.actor, 'saveShelfItem');
  const before = await findCatalogEntry(context.db, context.scope, 'shelf-item', item.id);
  // The save below holds only for this version, so what is judged here is what will be changed.
  if ((before?.version ?? 0) !== expectedVersion) throw new ConflictError('This item', item, before);
  const isFreed = before !== undefined && before.body.release !== 'anyone' && item.release === 'anyone';
  if (isFreed && !hasRole(context.actor, 'dentist')) {
    throw new AppError('NOT_ALLOWED', `Only a dentist may release ${item.name} from signature.`);
  }
  return saveCatalogEntry(context, 'saveShelfItem', { kind: 'shelf-item', id: item.id, body: item, expectedVersion });
}
