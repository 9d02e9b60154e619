import type { Answers } from '../../core/visit/answer.ts';
import { engineKindOf } from '../dialect.ts';
import type { Db, VisitTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import type { VisitSaid } from '../storedJson.ts';
import { isOfChart } from './charts.ts';
import { sortedBy } from './sortedBy.ts';

export interface Visit {
  readonly id: string;
  readonly patientId: string;
  readonly kind: VisitTable['kind'];
  readonly onDate: string;
  readonly state: VisitTable['state'];
  /** Null until the visit is closed. */
  readonly answers: Answers | null;
  /** Null until the visit is closed, and for visits closed before this was kept. */
  readonly said: VisitSaid | null;
  /** Null = not said. */
  readonly allExamined: boolean | null;
  readonly closedBy: string | null;
  readonly version: number;
}

export async function findVisit(db: Db, scope: SiteScope, id: string): Promise<Visit | undefined> {
  const row = await db.selectFrom('visit').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id).executeTakeFirst();
  return row && toVisit(row);
}

/** Inside a transaction: the visit stays as it is until the transaction ends, while others may read and add answers to it. */
export async function findVisitHeld(trx: Db, scope: SiteScope, id: string): Promise<Visit | undefined> {
  const query = trx.selectFrom('visit').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id);
  // On SQLite the transaction itself has the only connection.
  const row = await (engineKindOf(trx) === 'postgres' ? query.forShare() : query).executeTakeFirst();
  return row && toVisit(row);
}

export async function findOpenVisit(db: Db, scope: SiteScope, patientId: string): Promise<Visit | undefined> {
  const query = db.selectFrom('visit').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  const row = await query.where('state', '=', 'open').executeTakeFirst();
  return row && toVisit(row);
}

/** Of one person, oldest first. */
export async function listVisits(db: Db, scope: SiteScope, patientId: string): Promise<Visit[]> {
  const query = db.selectFrom('visit').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  return (await query.orderBy(sortedBy('onDate')).orderBy(sortedBy('id')).execute()).map(toVisit);
}

/** Of several charts, oldest first. */
export async function listVisitsOfCharts(db: Db, scope: SiteScope, chartIds: readonly string[]): Promise<Visit[]> {
  if (chartIds.length === 0) return [];
  const query = db.selectFrom('visit').selectAll().where('siteId', '=', scope.siteId).where('patientId', 'in', chartIds);
  return (await query.orderBy(sortedBy('onDate')).orderBy(sortedBy('id')).execute()).map(toVisit);
}

/** Whether anybody was ever seen here. */
export async function hasClosedVisit(db: Db, scope: SiteScope): Promise<boolean> {
  const query = db.selectFrom('visit').select('id').where('siteId', '=', scope.siteId).where('state', '=', 'closed');
  return (await query.limit(1).executeTakeFirst()) !== undefined;
}

export type VisitHead = Pick<VisitTable, 'id' | 'patientId' | 'onDate' | 'state'>;

/** Of the whole practice, oldest first, without what was said at them. */
export function listVisitHeads(db: Db, scope: SiteScope): Promise<VisitHead[]> {
  const query = db.selectFrom('visit').select(['id', 'patientId', 'onDate', 'state']).where('siteId', '=', scope.siteId);
  return query.orderBy('onDate').orderBy('id').execute();
}

/** Every open visit of the practice, and every visit of one local date. */
export async function listVisitsOfDay(db: Db, scope: SiteScope, onDate: string): Promise<Visit[]> {
  const rows = await db
    .selectFrom('visit')
    .selectAll()
    .where('siteId', '=', scope.siteId)
    .where(({ or, eb }) => or([eb('onDate', '=', onDate), eb('state', '=', 'open')]))
    .orderBy('id')
    .execute();
  return rows.map(toVisit);
}

function toVisit({ siteId: _siteId, answers, said, allExamined, ...row }: VisitTable): Visit {
  return {
    ...row,
    answers: answers === null ? null : JSON.parse(answers),
    said: said === null ? null : JSON.parse(said),
    allExamined: allExamined === null ? null : allExamined === 1,
  };
}
