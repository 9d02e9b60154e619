import type { Finding } from '../../core/visit/types.ts';
import { columnsToFinding } from '../findingColumns.ts';
import type { Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** Of one visit, in the order they were noted, without those noted by mistake. Surfaces without a finding are sound only if the visit says that all were examined. */
export async function listFindings(db: Db, scope: SiteScope, visitId: string): Promise<Finding[]> {
  const query = db
    .selectFrom('finding')
    .selectAll()
    .where('siteId', '=', scope.siteId)
    .where('visitId', '=', visitId)
    .where('voidReason', 'is', null);
  return (await query.orderBy('id').execute()).map(columnsToFinding);
}
