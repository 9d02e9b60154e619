import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { findPatient } from '../store/read/patients.ts';
import { listVisits } from '../store/read/visits.ts';
import type { Db } from '../store/schema.ts';
import { updateRow } from '../store/write/rows.ts';
import { askSamePerson } from './askSamePerson.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { checkPatientDetails, type PatientDetails } from './patientDetails.ts';
import { searchKeyOfChart } from './patientSearchKey.ts';
import { requireRight } from './rights.ts';

export interface ChangePatientInput {
  readonly patientId: string;
  /** All of them, as they are from now on. */
  readonly details: PatientDetails;
  /** Version last seen. */
  readonly expectedVersion: number;
  /** Needed where the name or the birthday changes. */
  readonly reason?: string | undefined;
  /** Somebody has said that a chart with the same number, or the same name and birthday, is of another person. */
  readonly isAnotherPerson?: boolean | undefined;
}

/**
 * Changes who a person is to the practice. The earlier words stay in the log.
 * @throws AppError PATIENT_NOT_FOUND, INPUT_INVALID, REASON_REQUIRED, LIKELY_SAME_PERSON; ConflictError with both values
 */
export async function changePatient(context: ActionContext, input: ChangePatientInput): Promise<{ version: number }> {
  requireRight(context.actor, 'changePatient');
  const { scope } = context;
  const { patientId, expectedVersion, isAnotherPerson = false } = input;
  const { birthDate, profile } = checkPatientDetails(input.details);
  return inTransaction(context, 'changePatient', async (trx, log) => {
    const before = await findPatient(trx, scope, patientId);
    if (before?.state !== 'active') throw new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');
    if (before.version !== expectedVersion) throw new ConflictError('This person', input.details, before);
    const isRenamed = before.profile.name !== profile.name;
    const isNewDay = before.birthDate !== birthDate;
    const reason = isRenamed || isNewDay ? requireReason(input.reason) : null;
    if (isNewDay) await requireBornBeforeVisits(trx, context, patientId, birthDate);
    if (isRenamed || isNewDay || before.profile.chartNumber !== profile.chartNumber)
      await askSamePerson(trx, scope, { birthDate, ...profile }, { exceptId: patientId, isAnotherPerson });
    const patch = { birthDate, profile: JSON.stringify(profile), searchKey: await searchKeyOfChart(trx, scope, patientId, profile) };
    const row = await updateRow(trx, scope, 'patient', { id: patientId, version: expectedVersion }, patch);
    if (!row) throw new ConflictError('This person', input.details, await findPatient(trx, scope, patientId));
    log.row('patient', row, reason);
    return { version: row.version };
  });
}

/** Every visit has an age. @throws AppError INPUT_INVALID */
export async function requireBornBeforeVisits(
  trx: Db,
  { scope }: Pick<ActionContext, 'scope'>,
  patientId: string,
  birthDate: string,
): Promise<void> {
  const [first] = await listVisits(trx, scope, patientId);
  if (first && first.onDate < birthDate)
    throw new AppError('INPUT_INVALID', `The birth date ${birthDate} lies after a visit on record, of ${first.onDate}.`);
}
