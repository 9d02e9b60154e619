import type { Db, DraftFieldTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type NewDraftField = Omit<DraftFieldTable, 'siteId' | 'version'>;

/**
 * Saves one field: over any other value, or with `expectedVersion` only over that version of it (0 = not there yet).
 * Undefined when the field has another version by now.
 */
export function saveDraftField(
  trx: Db,
  scope: SiteScope,
  field: NewDraftField,
  expectedVersion: number | undefined,
): Promise<DraftFieldTable | undefined> {
  const { visitId, path, value, memberId, savedAt } = field;
  if (expectedVersion !== undefined && expectedVersion > 0) {
    return trx
      .updateTable('draftField')
      .set({ value, memberId, savedAt, version: expectedVersion + 1 })
      .where('siteId', '=', scope.siteId)
      .where('visitId', '=', visitId)
      .where('path', '=', path)
      .where('version', '=', expectedVersion)
      .returningAll()
      .executeTakeFirst();
  }
  return trx
    .insertInto('draftField')
    .values({ ...field, siteId: scope.siteId, version: 1 })
    .onConflict((conflict) => {
      const same = conflict.columns(['siteId', 'visitId', 'path']);
      if (expectedVersion === 0) return same.doNothing();
      return same.doUpdateSet(({ eb, ref }) => ({ value, memberId, savedAt, version: eb(ref('draftField.version'), '+', 1) }));
    })
    .returningAll()
    .executeTakeFirst();
}

/** Many fields of a visit that have no value yet, in one statement. */
export async function insertDraftFields(trx: Db, { siteId }: SiteScope, fields: readonly NewDraftField[]): Promise<void> {
  if (fields.length === 0) return;
  await trx
    .insertInto('draftField')
    .values(fields.map((field) => ({ ...field, siteId, version: 1 })))
    .execute();
}

/** Keeps the value that a field has now, or with no path that of every field, before it is changed or the draft ends. */
export async function keepDraftValues(trx: Db, scope: SiteScope, visitId: string, path?: string): Promise<void> {
  const columns = ['siteId', 'visitId', 'path', 'version', 'value', 'memberId', 'savedAt'] as const;
  let query = trx.selectFrom('draftField').select(columns).where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  if (path !== undefined) query = query.where('path', '=', path);
  await trx
    .insertInto('draftPast')
    .columns([...columns])
    .expression(query)
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}

export async function deleteDraft(trx: Db, scope: SiteScope, visitId: string): Promise<void> {
  await trx.deleteFrom('draftField').where('siteId', '=', scope.siteId).where('visitId', '=', visitId).execute();
}
