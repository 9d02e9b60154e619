import { listTasksOfPatient } from '../store/read/tasks.ts';
import { insertRows } from '../store/write/rows.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { REFILL_STOPPED } from './refillFacts.ts';
import { requireRight } from './rights.ts';
import { requireVisitToSign } from './signItem.ts';

export interface StopRefillInput {
  readonly visitId: string;
  readonly today: string;
}

/** Something is new: nothing is given, and a check is due today that stays open until the next visit. */
export async function stopRefill(context: ActionContext, { visitId, today }: StopRefillInput): Promise<void> {
  const { scope, actor, newId } = context;
  requireRight(actor, 'stopRefill');
  await inTransaction(context, 'stopRefill', async (trx, log) => {
    const { patientId } = await requireVisitToSign(trx, scope, visitId);
    const tasks = await listTasksOfPatient(trx, scope, patientId);
    if (tasks.some((task) => task.state === 'open' && task.note === REFILL_STOPPED)) return;
    const task = { id: newId(), patientId, visitId, kind: 'check' as const, due: today, state: 'open' as const, note: REFILL_STOPPED };
    log.rows('task', await insertRows(trx, scope, 'task', [task]));
  });
}
