import { searchKey } from '../store/searchKey.ts';
import type { PatientProfile } from '../store/storedJson.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireDate, requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface AddPatientInput extends PatientProfile {
  /** Local date, ISO. */
  readonly birthDate: string;
}

export async function addPatient(context: ActionContext, { birthDate, ...profile }: AddPatientInput): Promise<{ patientId: string }> {
  requireRight(context.actor, 'addPatient');
  const name = requireText('The name', profile.name);
  const patientId = context.newId();
  const patient = {
    id: patientId,
    searchKey: searchKey(profile.chartNumber === undefined ? name : `${name} ${profile.chartNumber}`),
    birthDate: requireDate('The birth date', birthDate),
    profile: JSON.stringify({ ...profile, name } satisfies PatientProfile),
    state: 'active',
    mergedInto: null,
  } as const;
  return inTransaction(context, 'addPatient', async (trx, log) => {
    log.rows('patient', await insertRows(trx, context.scope, 'patient', [patient]));
    return { patientId };
  });
}
