import type { Db, PatientTable } from '../schema.ts';
import { searchKey } from '../searchKey.ts';
import type { SiteScope } from '../siteScope.ts';
import type { PatientProfile } from '../storedJson.ts';

export interface Patient {
  readonly id: string;
  readonly birthDate: string;
  readonly profile: PatientProfile;
  readonly state: PatientTable['state'];
  readonly mergedInto: string | null;
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

function toPatient({ id, birthDate, profile, state, mergedInto, version }: PatientTable): Patient {
  return { id, birthDate, profile: JSON.parse(profile), state, mergedInto, version };
}
