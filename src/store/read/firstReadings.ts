import type { BoundedRlu } from '../../core/reading/censoredSummary.ts';
import type { Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** The first counted reading of each person on one meter, numbers at a limit of the meter too. */
export async function listFirstReadings(db: Db, scope: SiteScope, meterId: string): Promise<BoundedRlu[]> {
  const rows = await db
    .selectFrom('reading')
    .select(['patientId', 'rlu', 'bound'])
    .where('siteId', '=', scope.siteId)
    .where('use', '=', 'patient')
    .where('meterId', '=', meterId)
    .where('state', 'in', ['valid', 'flagged'])
    .where('rlu', '>', 0)
    .where('takenAt', 'is not', null)
    // The newest first, so that the first of each person is the one that stays.
    .orderBy('takenAt', 'desc')
    .execute();
  const first = new Map(rows.map(({ patientId, rlu, bound }) => [patientId, { rlu: rlu ?? 0, bound: bound ?? ('exact' as const) }]));
  return [...first.values()];
}
