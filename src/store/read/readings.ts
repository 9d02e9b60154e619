import type { SwabReading } from '../../core/reading/types.ts';
import type { Db, ReadingTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { isOfChart } from './charts.ts';

export type Reading = Omit<ReadingTable, 'siteId' | 'reasons' | 'swab'> & {
  readonly reasons: readonly string[];
  readonly swab: SwabReading | null;
};

/** Of one person, oldest first; those without a time first. An unknown person gives an empty list, not an error. */
export async function listReadings(db: Db, scope: SiteScope, patientId: string): Promise<Reading[]> {
  const query = db.selectFrom('reading').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  const rows = await query
    .orderBy('takenAt', (order) => order.asc().nullsFirst())
    .orderBy('id')
    .execute();
  return rows.map(({ siteId: _siteId, reasons, swab, ...row }) => ({
    ...row,
    reasons: JSON.parse(reasons),
    swab: swab === null ? null : JSON.parse(swab),
  }));
}

/** The patient's own reading of a visit, as it stands. */
export function findReadingOfVisit(db: Db, scope: SiteScope, visitId: string): Promise<ReadingTable | undefined> {
  const query = db.selectFrom('reading').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return query.where('use', '=', 'patient').executeTakeFirst();
}

/** Of a person, a control or a study. */
export function findReading(db: Db, scope: SiteScope, id: string): Promise<ReadingTable | undefined> {
  return db.selectFrom('reading').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id).executeTakeFirst();
}
