import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { type Appointment, findAppointment } from '../store/read/appointments.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireClockTime, requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface ChangeAppointmentInput {
  readonly id: string;
  readonly expectedVersion: number;
  /** Cancelled and missed take a reason; back to planned takes none. */
  readonly state?: Appointment['state'] | undefined;
  readonly reason?: string | undefined;
  /** Local time "09:40"; null = some time that day; absent = as it is. */
  readonly atTime?: string | null | undefined;
}

/**
 * Cancelled, missed, expected again, or at another time. The reason stands in the log, so that taking it back needs no second place.
 * @throws AppError APPOINTMENT_NOT_FOUND, REASON_REQUIRED, INPUT_INVALID; ConflictError when somebody else was faster
 */
export async function changeAppointment(context: ActionContext, input: ChangeAppointmentInput): Promise<Appointment> {
  const { scope, actor } = context;
  requireRight(actor, 'changeAppointment');
  const { id, expectedVersion, state, atTime } = input;
  const reason = state === 'cancelled' || state === 'missed' ? requireReason(input.reason) : null;
  const patch = {
    ...(state === undefined ? {} : { state }),
    ...(atTime === undefined ? {} : { atTime: atTime === null ? null : requireClockTime('The time', atTime) }),
  };
  return inTransaction(context, 'changeAppointment', async (trx, log) => {
    const before = await findAppointment(trx, scope, id);
    if (!before) throw new AppError('APPOINTMENT_NOT_FOUND', 'This appointment is not on the list of this practice.');
    const stored = await updateRow(trx, scope, 'appointment', { id, version: expectedVersion }, patch);
    if (!stored) throw new ConflictError('The appointment', patch, before);
    log.row('appointment', stored, reason);
    const { siteId: _siteId, ...appointment } = stored;
    return appointment;
  });
}
