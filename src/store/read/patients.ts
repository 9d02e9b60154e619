import type { PatientProfile } from '../../core/visit/patientProfile.ts';
import { engineKindOf } from '../dialect.ts';
import type { Db, PatientTable } from '../schema.ts';
import { searchKey } from '../searchKey.ts';
import type { SiteScope } from '../siteScope.ts';

export interface Patient {
  readonly id: string;
  readonly birthDate: string;
  readonly profile: PatientProfile;
  readonly state: PatientTable['state'];
  readonly mergedInto: string | null;
  /** Names and chart numbers, those of charts merged into this one too, as a search looks for them. */
  readonly searchKey: string;
  readonly version: number;
}

const MOST_WORDS = 6;

export async function findPatient(db: Db, scope: SiteScope, id: string): Promise<Patient | undefined> {
  const row = await db.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id).executeTakeFirst();
  return row && toPatient(row);
}

/** In no order; an id that nobody has is left out. */
export async function listPatientsById(db: Db, scope: SiteScope, ids: readonly string[]): Promise<Patient[]> {
  if (ids.length === 0) return [];
  const rows = await db.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('id', 'in', ids).execute();
  return rows.map(toPatient);
}

/** Charts that were merged into another, of the whole practice. */
export function listMergedCharts(db: Db, scope: SiteScope): Promise<Pick<PatientTable, 'id' | 'mergedInto'>[]> {
  return db
    .selectFrom('patient')
    .select(['id', 'mergedInto'])
    .where('siteId', '=', scope.siteId)
    .where('mergedInto', 'is not', null)
    .execute();
}

/** Inside a transaction: these charts stay as they are until it ends, and nobody else holds them. Undefined for a chart that is not there. */
export async function holdPatients(trx: Db, scope: SiteScope, ids: readonly string[]): Promise<(Patient | undefined)[]> {
  const query = trx.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('id', 'in', ids).orderBy('id');
  // On SQLite the transaction itself has the only connection. Held in the order of their ids, so that nobody waits for each other.
  const rows = await (engineKindOf(trx) === 'postgres' ? query.forUpdate() : query).execute();
  return ids.map((id) => rows.filter((row) => row.id === id).map(toPatient)[0]);
}

/** The chart that is kept for this one: itself, or the one it was merged into, by way of others too. */
export async function findKeptPatient(db: Db, scope: SiteScope, id: string): Promise<Patient | undefined> {
  const patient = await findPatient(db, scope, id);
  // A merged chart can take none in, so the way ends.
  return patient?.state === 'merged' && patient.mergedInto !== null ? findKeptPatient(db, scope, patient.mergedInto) : patient;
}

/** Charts merged into this one, by way of others too, in the order in which they were begun. */
export async function listChartsMergedInto(db: Db, scope: SiteScope, id: string): Promise<Patient[]> {
  const rows = await db.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'merged').execute();
  const into = (target: string): PatientTable[] => rows.filter((row) => row.mergedInto === target).flatMap((row) => [row, ...into(row.id)]);
  return into(id)
    .sort((a, b) => a.id.localeCompare(b.id))
    .map(toPatient);
}

/** Charts that may be of the same person: the same chart number, or the same name and birthday. Those merged into another count for it. */
export async function listSamePeople(
  db: Db,
  scope: SiteScope,
  { name, birthDate, chartNumber }: Pick<PatientProfile, 'name' | 'chartNumber'> & { readonly birthDate: string },
): Promise<Patient[]> {
  const chartKey = chartNumber === undefined ? '' : searchKey(chartNumber);
  const rows = await db
    .selectFrom('patient')
    .selectAll()
    .where('siteId', '=', scope.siteId)
    .where('state', '!=', 'erased')
    .where(({ or, eb }) => or([eb('birthDate', '=', birthDate), ...(chartKey === '' ? [] : [eb('searchKey', 'like', `%${chartKey}%`)])]))
    .orderBy('id')
    .execute();
  const isSame = ({ profile, ...other }: Patient) =>
    (other.birthDate === birthDate && searchKey(profile.name) === searchKey(name)) ||
    (chartKey !== '' && profile.chartNumber !== undefined && searchKey(profile.chartNumber) === chartKey);
  return rows.map(toPatient).filter(isSame);
}

/**
 * Active people whose names begin with the words asked for, in any order and without regard to accents; all for an empty text.
 * A word of digits finds a birth date too, e.g. "1984" or "1984-03", beside the chart number. In the order of their names.
 */
export async function listPatients(db: Db, scope: SiteScope, text = '', limit = 10_000): Promise<Patient[]> {
  let query = db.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'active');
  for (const word of text.trim().split(/\s+/).slice(0, MOST_WORDS)) {
    const key = searchKey(word);
    if (key === '') continue;
    query = query.where(({ eb, val, or }) => {
      // The key has letters, digits and spaces alone, so nothing in it is a sign of `like`. The space before makes every word a first one.
      const inKey = eb(eb(val(' '), '||', eb.ref('searchKey')), 'like', `% ${key}%`);
      return /^\d[\d-]*$/.test(word) ? or([inKey, eb('birthDate', 'like', `${word}%`)]) : inKey;
    });
  }
  const rows = await query.orderBy('searchKey').orderBy('id').limit(limit).execute();
  return rows.map(toPatient);
}

/** Every active person of the practice, however many, in no order. */
export async function listEveryPatient(db: Db, scope: SiteScope): Promise<Patient[]> {
  const rows = await db.selectFrom('patient').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'active').execute();
  return rows.map(toPatient);
}

function toPatient({ id, birthDate, profile, state, mergedInto, searchKey: key, version }: PatientTable): Patient {
  return { id, birthDate, profile: JSON.parse(profile), state, mergedInto, searchKey: key, version };
}
