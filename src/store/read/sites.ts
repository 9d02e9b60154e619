import type { PracticeFile } from '../../core/visit/types.ts';
import { engineKindOf } from '../dialect.ts';
import type { Db, SiteTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import type { StoredSettings } from '../storedJson.ts';
import { listCatalog } from './catalog.ts';

/** For the owner of the machine: which practices the store holds. */
export function listSites(db: Db): Promise<Pick<SiteTable, 'siteId' | 'name'>[]> {
  return db.selectFrom('site').select(['siteId', 'name']).orderBy('siteId').execute();
}

export function findSite(db: Db, scope: SiteScope): Promise<SiteTable | undefined> {
  return db.selectFrom('site').selectAll().where('siteId', '=', scope.siteId).executeTakeFirst();
}

/** Inside a transaction: whoever else holds the practice waits until this transaction ends. */
export async function holdSite(trx: Db, scope: SiteScope): Promise<void> {
  // On SQLite the transaction itself has the only connection.
  if (engineKindOf(trx) !== 'postgres') return;
  await trx.selectFrom('site').select('siteId').where('siteId', '=', scope.siteId).forUpdate().execute();
}

export interface StoredPractice {
  readonly practice: PracticeFile;
  readonly locale: string;
  /** The practice's own; undefined = as proposed. */
  readonly hideAfterMinutes: number | undefined;
  /** For the next change of the settings. */
  readonly version: number;
}

/** Name, settings, meters, lots and shelf as the computing core takes them; undefined for an unknown site. */
export async function findPractice(db: Db, scope: SiteScope): Promise<StoredPractice | undefined> {
  const site = await findSite(db, scope);
  if (!site) return undefined;
  const { invented, settings, hideAfterMinutes }: StoredSettings = JSON.parse(site.settings);
  const bodies = async <K extends 'meter' | 'lot' | 'shelf-item' | 'local-protocol'>(kind: K) =>
    (await listCatalog(db, scope, kind)).map(({ body }) => body);
  const localProtocols = await bodies('local-protocol');
  return {
    practice: {
      name: site.name,
      invented,
      timeZone: site.timeZone,
      settings,
      meters: await bodies('meter'),
      lots: await bodies('lot'),
      shelf: await bodies('shelf-item'),
      ...(localProtocols.length > 0 && { localProtocols }),
    },
    locale: site.locale,
    hideAfterMinutes,
    version: site.version,
  };
}
