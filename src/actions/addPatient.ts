import { insertRows } from '../store/write/rows.ts';
import { askSamePerson } from './askSamePerson.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { checkPatientDetails, type PatientDetails } from './patientDetails.ts';
import { searchKeyOf } from './patientSearchKey.ts';
import { requireRight } from './rights.ts';

export interface AddPatientInput extends PatientDetails {
  /** False = ask back where this may be somebody on record. Absent = the caller has seen to that. */
  readonly isAnotherPerson?: boolean | undefined;
}

/** @throws AppError INPUT_INVALID, LIKELY_SAME_PERSON */
export async function addPatient(context: ActionContext, input: AddPatientInput): Promise<{ patientId: string }> {
  requireRight(context.actor, 'addPatient');
  const { isAnotherPerson = true, ...details } = input;
  const { birthDate, profile } = checkPatientDetails(details);
  const patientId = context.newId();
  const patient = {
    id: patientId,
    searchKey: searchKeyOf(profile),
    birthDate,
    profile: JSON.stringify(profile),
    state: 'active',
    mergedInto: null,
  } as const;
  return inTransaction(context, 'addPatient', async (trx, log) => {
    await askSamePerson(trx, context.scope, { birthDate, ...profile }, { isAnotherPerson });
    log.rows('patient', await insertRows(trx, context.scope, 'patient', [patient]));
    return { patientId };
  });
}
