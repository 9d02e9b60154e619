import { AppError } from '../api/errors.ts';
import type { PatientProfile } from '../core/visit/patientProfile.ts';
import { findKeptPatient, listSamePeople, type Patient } from '../store/read/patients.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** One's own chart, and whether somebody has been asked already. */
export interface SamePersonCheck {
  readonly exceptId?: string | undefined;
  /** Somebody has said that it is another person. */
  readonly isAnotherPerson?: boolean | undefined;
}

/** Asks back where a chart number, or a name with its birthday, is on record already. @throws AppError LIKELY_SAME_PERSON */
export async function askSamePerson(
  trx: Db,
  scope: SiteScope,
  person: Pick<PatientProfile, 'name' | 'chartNumber'> & { readonly birthDate: string },
  { exceptId, isAnotherPerson = false }: SamePersonCheck,
): Promise<void> {
  if (isAnotherPerson) return;
  for (const found of await listSamePeople(trx, scope, person)) {
    const kept = await findKeptPatient(trx, scope, found.id);
    if (kept && kept.id !== exceptId)
      throw new AppError('LIKELY_SAME_PERSON', `${sayChart(found)} is on record already. Is it the same person?`);
  }
}

/** "Ada Lind, born 1984-03-02, chart 1002". */
const sayChart = ({ profile: { name, chartNumber }, birthDate }: Patient): string =>
  [name, `born ${birthDate}`, chartNumber && `chart ${chartNumber}`].filter(Boolean).join(', ');
