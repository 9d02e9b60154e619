import type { ActionContext } from '../actions/context.ts';
import type { MergedChart, PersonChange, PersonPage } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import type { PersonDetails } from '../api/personSchema.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import { type Change, listChangesOf } from '../store/read/changes.ts';
import { listMembers } from '../store/read/members.ts';
import { findKeptPatient, listChartsMergedInto, type Patient } from '../store/read/patients.ts';
import { listVisits } from '../store/read/visits.ts';
import type { PatientTable } from '../store/schema.ts';
import { localDate } from './siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now'>;

/** Who a person is to the practice, with every earlier word. A merged chart leads to the one that is kept. @throws AppError PATIENT_NOT_FOUND */
export async function readPersonPage(context: Reader, id: string): Promise<PersonPage> {
  const { db, scope } = context;
  const patient = await findKeptPatient(db, scope, id);
  if (patient?.state !== 'active') throw new AppError('PATIENT_NOT_FOUND', 'This person is not in the records of this practice.');
  const today = await localDate(context);
  const visits = await listVisits(db, scope, patient.id);
  const nameOf = await readMemberNames(context);
  const mergedCharts: MergedChart[] = [];
  for (const chart of await listChartsMergedInto(db, scope, patient.id)) mergedCharts.push(await readMergedChart(context, chart, nameOf));
  return {
    id: patient.id,
    version: patient.version,
    details: detailsOf(patient),
    ageYears: patient.birthDate > today ? 0 : ageOn(patient.birthDate, today).ageYears,
    openVisitId: visits.find(({ state }) => state === 'open')?.id ?? null,
    dayVisitId: visits.findLast(({ state, said }) => state === 'open' || said?.acidDay !== undefined)?.id ?? null,
    visits: visits.length,
    mergedCharts,
    history: (await listChangesOf(db, scope, { table: 'patient', id: patient.id })).map((change) => toPersonChange(change, nameOf)),
  };
}

const detailsOf = ({ birthDate, profile }: Pick<Patient, 'birthDate' | 'profile'>): PersonDetails =>
  // Stored details were checked by the same rules; the copy only loses `readonly`.
  ({ ...(profile as Omit<PersonDetails, 'birthDate'>), birthDate });

type NameOf = (memberId: string | null) => string | null;

async function readMemberNames({ db, scope }: Reader): Promise<NameOf> {
  const names = new Map((await listMembers(db, scope)).map(({ id, name }) => [id, name]));
  return (memberId) => (memberId === null ? null : (names.get(memberId) ?? null));
}

async function readMergedChart({ db, scope }: Reader, chart: Patient, nameOf: NameOf): Promise<MergedChart> {
  const { id, version, birthDate, profile } = chart;
  const marked = (await listChangesOf(db, scope, { table: 'patient', id })).filter(({ action }) => action === 'mergePatients').at(-1);
  return {
    id,
    version,
    name: profile.name,
    birthDate,
    chartNumber: profile.chartNumber ?? null,
    visits: (await listVisits(db, scope, id)).length,
    merged: marked ? { at: marked.at, by: nameOf(marked.memberId), reason: marked.reason } : null,
  };
}

function toPersonChange({ at, memberId, action, reason, body }: Change, nameOf: NameOf): PersonChange {
  const said = { at, by: nameOf(memberId), action, reason };
  if (body === undefined) return said;
  // The log holds the row as the action wrote it.
  const { birthDate, profile, state } = body as PatientTable;
  return { ...said, state, details: detailsOf({ birthDate, profile: JSON.parse(profile) }) };
}
