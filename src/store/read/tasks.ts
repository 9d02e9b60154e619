import type { Db, TaskTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { isOfChart } from './charts.ts';

/** Open tasks of the practice due on a local date or before it, the most overdue first; all open tasks without a date. */
export function listOpenTasks(db: Db, scope: SiteScope, dueUntil?: string): Promise<TaskTable[]> {
  let query = db.selectFrom('task').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'open');
  if (dueUntil !== undefined) query = query.where('due', '<=', dueUntil);
  return query.orderBy('due').orderBy('id').execute();
}

/** Of one person, done ones too, by date. */
export function listTasksOfPatient(db: Db, scope: SiteScope, patientId: string): Promise<TaskTable[]> {
  const query = db.selectFrom('task').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  return query.orderBy('due').orderBy('id').execute();
}

/** Open ones of several charts, by date. */
export async function listOpenTasksOfCharts(db: Db, scope: SiteScope, chartIds: readonly string[]): Promise<TaskTable[]> {
  if (chartIds.length === 0) return [];
  const query = db.selectFrom('task').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'open');
  return query.where('patientId', 'in', chartIds).orderBy('due').orderBy('id').execute();
}
