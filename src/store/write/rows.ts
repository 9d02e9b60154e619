import type { Insertable } from 'kysely';
import type { LoggedTableName } from '../loggedTables.ts';
import type { Database, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** Tables of a practice that an action adds rows to one by one or in lists. */
type SiteTableName = Exclude<LoggedTableName, 'site' | 'account' | 'credential' | 'catalog'>;

/** What an action gives; the site comes from the scope and the version starts at 1. */
export type NewRow<T extends SiteTableName> = Omit<Insertable<Database[T]>, 'siteId' | 'version'>;

/** At most some thirty columns: below the number of values that either engine takes in one statement. */
const ROWS_PER_INSERT = 200;

/** Adds rows to one table of the scope's site and returns them as they stand there. */
export async function insertRows<T extends SiteTableName>(
  trx: Db,
  scope: SiteScope,
  table: T,
  rows: readonly NewRow<T>[],
): Promise<Database[T][]> {
  const values = rows.map((row) => ({ ...row, siteId: scope.siteId, version: 1 }));
  const inserted: Database[T][] = [];
  for (let from = 0; from < values.length; from += ROWS_PER_INSERT) {
    // One statement serves every table here: the compiler cannot follow a table name that is a type parameter.
    const stored = await trx
      .insertInto(table as 'task')
      .values(values.slice(from, from + ROWS_PER_INSERT) as unknown as Database['task'][])
      .returningAll()
      .execute();
    inserted.push(...(stored as unknown as Database[T][]));
  }
  return inserted;
}

/**
 * Changes one row if it still has the version that was read, and returns it; undefined if somebody else was faster.
 * Results are never updated, so they are no table of this function.
 */
export async function updateRow<T extends Exclude<SiteTableName, 'result'>>(
  trx: Db,
  scope: SiteScope,
  table: T,
  { id, version }: { readonly id: string; readonly version: number },
  patch: Partial<Omit<Database[T], 'siteId' | 'id' | 'version'>>,
): Promise<Database[T] | undefined> {
  const row = await trx
    .updateTable(table as 'task')
    .set({ ...(patch as object), version: version + 1 })
    .where('siteId', '=', scope.siteId)
    .where('id', '=', id)
    .where('version', '=', version)
    .returningAll()
    .executeTakeFirst();
  return row as unknown as Database[T] | undefined;
}
