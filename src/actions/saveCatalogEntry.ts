import { ConflictError } from '../store/errors.ts';
import { type CatalogBody, findCatalogEntry } from '../store/read/catalog.ts';
import type { CatalogKind } from '../store/schema.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import type { ActionName } from './rights.ts';

export interface CatalogSave<K extends CatalogKind> {
  readonly kind: K;
  readonly id: string;
  readonly body: CatalogBody<K>;
  /** Version last seen, 0 for a new entry. */
  readonly expectedVersion: number;
}

/** Writes one entry of the practice's catalog; the actions that call it have checked the right. */
export async function saveCatalogEntry<K extends CatalogKind>(
  context: ActionContext,
  action: ActionName,
  { kind, id, body, expectedVersion }: CatalogSave<K>,
): Promise<{ version: number }> {
  const entry = { kind, id: requireText('The id', id, 100), body: JSON.stringify(body) };
  return inTransaction(context, action, async (trx, log) => {
    const row = await saveCatalogRow(trx, context.scope, entry, expectedVersion);
    if (!row) throw new ConflictError('This entry', body, await findCatalogEntry(trx, context.scope, kind, id));
    log.row('catalog', row);
    return { version: row.version };
  });
}
