import type { ControlPlan, StopOverride, StopReadings, StopResolution } from '../../core/checks/control.ts';
import type { MeterCheckPlan } from '../../core/checks/meterCheck.ts';
import type { Study, StudyPerson } from '../../core/checks/study.ts';
import type { Training } from '../../core/checks/training.ts';
import type { Meter, SwabLot } from '../../core/reading/types.ts';
import type { LocalProtocol } from '../../core/regimen/local/localProtocol.ts';
import type { ShelfItem } from '../../core/regimen/types.ts';
import type { CatalogKind, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import type { StandingOrder } from '../storedJson.ts';

/** What the body of each kind is; the kinds not named here have bodies of their own readers. */
export type CatalogBody<K extends CatalogKind> = K extends 'meter'
  ? Meter
  : K extends 'lot'
    ? SwabLot
    : K extends 'shelf-item'
      ? ShelfItem
      : K extends 'standing-order'
        ? StandingOrder
        : K extends 'control-plan'
          ? ControlPlan
          : K extends 'stop-override'
            ? StopOverride
            : K extends 'meter-check-plan'
              ? MeterCheckPlan
              : K extends 'stop-resolved'
                ? StopResolution
                : K extends 'stop-readings'
                  ? StopReadings
                  : K extends 'study'
                    ? Study
                    : K extends 'study-person'
                      ? StudyPerson
                      : K extends 'training'
                        ? Training
                        : K extends 'local-protocol'
                          ? LocalProtocol
                          : unknown;

export interface CatalogEntry<K extends CatalogKind> {
  readonly id: string;
  readonly body: CatalogBody<K>;
  readonly version: number;
}

/** In the order of their ids. */
export async function listCatalog<K extends CatalogKind>(db: Db, scope: SiteScope, kind: K): Promise<CatalogEntry<K>[]> {
  const rows = await db
    .selectFrom('catalog')
    .select(['id', 'body', 'version'])
    .where('siteId', '=', scope.siteId)
    .where('kind', '=', kind)
    .orderBy('id')
    .execute();
  return rows.map((row) => ({ ...row, body: JSON.parse(row.body) }));
}

export async function findCatalogEntry<K extends CatalogKind>(
  db: Db,
  scope: SiteScope,
  kind: K,
  id: string,
): Promise<CatalogEntry<K> | undefined> {
  const row = await db
    .selectFrom('catalog')
    .select(['id', 'body', 'version'])
    .where('siteId', '=', scope.siteId)
    .where('kind', '=', kind)
    .where('id', '=', id)
    .executeTakeFirst();
  return row && { ...row, body: JSON.parse(row.body) };
}
