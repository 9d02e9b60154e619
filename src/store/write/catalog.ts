import type { CatalogTable, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type NewCatalogEntry = Pick<CatalogTable, 'kind' | 'id' | 'body'>;

/** Adds an entry (`version` 0) or changes the one of this version; undefined when there is another version by now. */
export function saveCatalogRow(trx: Db, scope: SiteScope, entry: NewCatalogEntry, version: number): Promise<CatalogTable | undefined> {
  if (version === 0) {
    const insert = trx.insertInto('catalog').values({ ...entry, siteId: scope.siteId, version: 1 });
    return insert
      .onConflict((conflict) => conflict.doNothing())
      .returningAll()
      .executeTakeFirst();
  }
  return trx
    .updateTable('catalog')
    .set({ body: entry.body, version: version + 1 })
    .where('siteId', '=', scope.siteId)
    .where('kind', '=', entry.kind)
    .where('id', '=', entry.id)
    .where('version', '=', version)
    .returningAll()
    .executeTakeFirst();
}
