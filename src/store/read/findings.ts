import type { Finding } from '../../core/visit/types.ts';
import { columnsToFinding } from '../findingColumns.ts';
import type { Db, FindingTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { sortedBy } from './sortedBy.ts';

/** Of one visit, in the order they were noted, without those noted by mistake. Surfaces without a finding are sound only if the visit says that all were examined. */
export async function listFindings(db: Db, scope: SiteScope, visitId: string): Promise<Finding[]> {
  return (await listFindingRows(db, scope, visitId)).filter(({ voidReason }) => voidReason === null).map(columnsToFinding);
}

/** The same as they stand, those noted by mistake too. */
export function listFindingRows(db: Db, scope: SiteScope, visitId: string): Promise<FindingTable[]> {
  const query = db.selectFrom('finding').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return query.orderBy(sortedBy('id')).execute();
}

/** Of several visits, those noted by mistake too. */
export async function listFindingRowsOfVisits(db: Db, scope: SiteScope, visitIds: readonly string[]): Promise<FindingTable[]> {
  if (visitIds.length === 0) return [];
  const query = db.selectFrom('finding').selectAll().where('siteId', '=', scope.siteId).where('visitId', 'in', visitIds);
  return query.orderBy(sortedBy('id')).execute();
}
