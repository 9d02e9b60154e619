import type { Db, SiteTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export function insertSite(trx: Db, site: Omit<SiteTable, 'version'>): Promise<SiteTable> {
  return trx
    .insertInto('site')
    .values({ ...site, version: 1 })
    .returningAll()
    .executeTakeFirstOrThrow();
}

/** Undefined when somebody else has changed the settings since this version. */
export function updateSettings(trx: Db, scope: SiteScope, settings: string, version: number): Promise<SiteTable | undefined> {
  return trx
    .updateTable('site')
    .set({ settings, version: version + 1 })
    .where('siteId', '=', scope.siteId)
    .where('version', '=', version)
    .returningAll()
    .executeTakeFirst();
}
