import type { GoalState } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import type { Db, TaskTable, VisitTable } from '../store/schema.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireDate } from './checks.ts';
import type { ActionContext } from './context.ts';

export interface ClosingTask {
  readonly kind: TaskTable['kind'];
  /** Local date, ISO. */
  readonly due: string;
  readonly note?: string | undefined;
}

const GOAL_ENDS: Readonly<Partial<Record<GoalState, TaskTable['state']>>> = { reached: 'done', dropped: 'dropped' };

/**
 * Writes what is to be done next. A visit answers the recall that led to it, so open recalls and checks of this person are done; an
 * earlier goal ends only when the person says so.
 */
export async function writeTasks(
  trx: Db,
  { scope, newId }: Pick<ActionContext, 'scope' | 'newId'>,
  visit: Pick<VisitTable, 'id' | 'patientId'>,
  tasks: readonly ClosingTask[],
  goalsSince: Readonly<Record<string, GoalState>> = {},
): Promise<TaskTable[]> {
  const written: TaskTable[] = [];
  for (const task of await listTasksOfPatient(trx, scope, visit.patientId)) {
    const said = goalsSince[task.id];
    const isAnswered = task.kind === 'recall' || task.kind === 'check';
    const state = isAnswered ? 'done' : task.kind === 'goal' && said ? GOAL_ENDS[said] : undefined;
    if (task.state !== 'open' || state === undefined) continue;
    const row = await updateRow(trx, scope, 'task', task, { state });
    if (!row) throw new ConflictError('A task', { state }, task);
    written.push(row);
  }
  const fresh = tasks.map(({ kind, due, note }) => ({
    id: newId(),
    patientId: visit.patientId,
    visitId: visit.id,
    kind,
    due: requireDate('A due date', due),
    state: 'open' as const,
    note: note ?? null,
  }));
  return [...written, ...(await insertRows(trx, scope, 'task', fresh))];
}
