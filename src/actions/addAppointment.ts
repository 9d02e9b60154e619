import { AppError } from '../api/errors.ts';
import { listAppointments } from '../store/read/appointments.ts';
import { findKeptPatient } from '../store/read/patients.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireClockTime, requireDate, requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface AddAppointmentInput {
  readonly patientId: string;
  /** Local date, ISO. */
  readonly onDate: string;
  /** Local time "09:40"; absent = some time that day. */
  readonly atTime?: string | undefined;
  readonly note?: string | undefined;
}

/**
 * Says who is expected on a day. Somebody who is expected at that very time already is not put down twice.
 * @throws AppError PATIENT_NOT_FOUND, INPUT_INVALID
 */
export async function addAppointment(context: ActionContext, input: AddAppointmentInput): Promise<{ appointmentId: string }> {
  requireRight(context.actor, 'addAppointment');
  const { patientId, note } = input;
  const onDate = requireDate('The date', input.onDate);
  const atTime = input.atTime === undefined ? null : requireClockTime('The time', input.atTime);
  const appointment = {
    id: context.newId(),
    onDate,
    atTime,
    state: 'planned',
    note: note === undefined ? null : requireText('The note', note, 500),
  } as const;
  return inTransaction(context, 'addAppointment', async (trx, log) => {
    const patient = await findKeptPatient(trx, context.scope, patientId);
    if (patient?.state !== 'active') throw new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');
    const there = await listAppointments(trx, context.scope, patient.id);
    const same = there.find((a) => a.onDate === onDate && a.atTime === atTime && a.state === 'planned');
    if (same) return { appointmentId: same.id };
    log.rows('appointment', await insertRows(trx, context.scope, 'appointment', [{ ...appointment, patientId: patient.id }]));
    return { appointmentId: appointment.id };
  });
}
