import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { findReading } from '../store/read/readings.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireRight } from './rights.ts';

export interface VoidReadingInput {
  readonly id: string;
  readonly expectedVersion: number;
  readonly reason: string;
}

/**
 * A control or a swab of a study was noted by mistake. The number stays, hollow and with the reason, and counts no more. A reading of a
 * person is corrected with its visit, and one of a study that was reported stays as the report has it.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, READING_NOT_FOUND, INPUT_INVALID; ConflictError
 */
export async function voidReading(context: ActionContext, input: VoidReadingInput): Promise<{ version: number }> {
  const { scope, actor } = context;
  requireRight(actor, 'voidReading');
  const reason = requireReason(input.reason);
  return inTransaction(context, 'voidReading', async (trx, log) => {
    const reading = await findReading(trx, scope, input.id);
    if (!reading) throw new AppError('READING_NOT_FOUND', 'There is no such reading in this practice.');
    if (reading.use === 'patient') throw new AppError('INPUT_INVALID', 'A reading of a person is corrected on its visit.');
    if (reading.studyId !== null) await requireOpenStudy(trx, scope, reading.studyId);
    if (reading.state === 'void') return { version: reading.version };
    const patch = { state: 'void', reasons: JSON.stringify([reason]) } as const;
    const row = await updateRow(trx, scope, 'reading', { id: reading.id, version: input.expectedVersion }, patch);
    if (!row) throw new ConflictError('This reading', reason, reading);
    log.row('reading', row, reason);
    return { version: row.version };
  });
}
