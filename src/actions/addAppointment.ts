import { AppError } from '../api/errors.ts';
import { findPatient } from '../store/read/patients.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireDate, requireText } from './checks.ts';
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

/** Says who is expected on a day. @throws AppError PATIENT_NOT_FOUND, INPUT_INVALID */
export async function addAppointment(context: ActionContext, input: AddAppointmentInput): Promise<{ appointmentId: string }> {
  requireRight(context.actor, 'addAppointment');
  const { patientId, atTime, note } = input;
  const appointmentId = context.newId();
  const appointment = {
    id: appointmentId,
    patientId,
    onDate: requireDate('The date', input.onDate),
    atTime: atTime === undefined ? null : requireClockTime('The time', atTime),
    state: 'planned',
    note: note === undefined ? null : requireText('The note', note, 500),
  } as const;
  return inTransaction(context, 'addAppointment', async (trx, log) => {
    const patient = await findPatient(trx, context.scope, patientId);
    if (patient?.state !== 'active') throw new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');
    log.rows('appointment', await insertRows(trx, context.scope, 'appointment', [appointment]));
    return { appointmentId };
  });
}

function requireClockTime(name: string, value: string): string {
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(value)) return value;
  throw new AppError('INPUT_INVALID', `${name} is not a time of the day such as 09:40: ${value}.`);
}
