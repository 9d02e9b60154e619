import type { Control, StopOverride, StopReadings } from '../../core/checks/control.ts';
import type { StudyReading } from '../../core/checks/study.ts';
import type { Db, ReadingTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import type { StudyRunNote } from '../storedJson.ts';

/** Which controls; times are UTC. */
export interface ControlFilter {
  readonly meterId?: string | undefined;
  /** Taken at this time or later. */
  readonly from?: string | undefined;
  /** Taken at this time or earlier. */
  readonly until?: string | undefined;
}

/**
 * Readings that belong to no person, oldest first. Saying so finds them in the index by person, without a look at anybody's readings;
 * no person is one range of it, already by time.
 */
function readingsOfNobody(db: Db, scope: SiteScope, use: 'control' | 'study') {
  return db
    .selectFrom('reading')
    .selectAll()
    .where('siteId', '=', scope.siteId)
    .where('patientId', 'is', null)
    .where('use', '=', use)
    .orderBy('takenAt')
    .orderBy('id');
}

/** Void ones too. */
export async function listControls(db: Db, scope: SiteScope, { meterId, from, until }: ControlFilter = {}): Promise<Control[]> {
  let query = readingsOfNobody(db, scope, 'control');
  if (meterId !== undefined) query = query.where('meterId', '=', meterId);
  if (from !== undefined) query = query.where('takenAt', '>=', from);
  if (until !== undefined) query = query.where('takenAt', '<=', until);
  return (await query.execute()).flatMap(toControl);
}

export async function findControl(db: Db, scope: SiteScope, id: string): Promise<Control | undefined> {
  const query = db.selectFrom('reading').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id);
  const row = await query.where('use', '=', 'control').executeTakeFirst();
  return row && toControl(row)[0];
}

/** Void ones too, in the order in which they were taken. */
export async function listStudyReadings(db: Db, scope: SiteScope, studyId: string): Promise<StudyReading[]> {
  return (await readingsOfNobody(db, scope, 'study').where('studyId', '=', studyId).execute()).flatMap(toStudyReading);
}

/** How many swabs of each study have a reading that counts. */
export async function countStudyReadings(db: Db, scope: SiteScope): Promise<ReadonlyMap<string, number>> {
  const rows = await db
    .selectFrom('reading')
    .select(['studyId', (of) => of.fn.countAll().as('count')])
    .where('siteId', '=', scope.siteId)
    .where('patientId', 'is', null)
    .where('use', '=', 'study')
    .where('state', '=', 'valid')
    .groupBy('studyId')
    .execute();
  return new Map(rows.map(({ studyId, count }) => [studyId ?? '', Number(count)]));
}

/** A reading of a person that a stop may put under question. */
export type ReadingBefore = Pick<
  ReadingTable,
  'id' | 'version' | 'patientId' | 'visitId' | 'takenAt' | 'rlu' | 'bound' | 'state' | 'reasons' | 'meterId' | 'operator'
>;

/** Readings of people with a number, on one meter with one lot, from one time up to another; oldest first. */
export function listReadingsBetween(
  db: Db,
  scope: SiteScope,
  { meterId, lotId, from, until }: Pick<StopReadings, 'meterId' | 'lotId' | 'from' | 'until'>,
): Promise<ReadingBefore[]> {
  let query = db
    .selectFrom('reading')
    .select(['id', 'version', 'patientId', 'visitId', 'takenAt', 'rlu', 'bound', 'state', 'reasons', 'meterId', 'operator'])
    .where('siteId', '=', scope.siteId)
    .where('use', '=', 'patient')
    .where('meterId', '=', meterId)
    .where('lotId', '=', lotId)
    .where('state', 'in', ['valid', 'flagged', 'void'])
    .where('rlu', 'is not', null)
    .where('takenAt', '<', until);
  if (from !== null) query = query.where('takenAt', '>=', from);
  return query.orderBy('takenAt').orderBy('id').execute();
}

/** Those that hold on a local date. Their ids begin with it. */
export async function listOverridesOn(db: Db, scope: SiteScope, onDate: string): Promise<StopOverride[]> {
  const query = db.selectFrom('catalog').select('body').where('siteId', '=', scope.siteId).where('kind', '=', 'stop-override');
  return (await query.where('id', 'like', `${onDate}/%`).execute()).map(({ body }) => JSON.parse(body));
}

/** The id under which an override stands: one control is overridden once a day. */
export const overrideIdOf = ({ onDate, controlId }: Pick<StopOverride, 'onDate' | 'controlId'>): string => `${onDate}/${controlId}`;

/** What every reading of a control or a study has; the actions that write them give all of it. */
function complete(row: ReadingTable) {
  const { id, meterId, lotId, operator, takenAt, rlu, bound, reasons, version, swab } = row;
  if (meterId === null || takenAt === null || rlu === null || swab === null) return undefined;
  const isVoid = row.state === 'void';
  const voidReasons: readonly string[] = isVoid ? JSON.parse(reasons) : [];
  const said = { state: isVoid ? 'void' : 'valid', voidReason: voidReasons[0] ?? null } as const;
  return { known: { id, meterId, operator, takenAt, rlu, bound: bound ?? ('exact' as const), version, ...said }, lotId, swab };
}

function toControl(row: ReadingTable): Control[] {
  const whole = complete(row);
  if (!whole || whole.lotId === null) return [];
  return [{ ...whole.known, lotId: whole.lotId, note: JSON.parse(whole.swab) }];
}

function toStudyReading(row: ReadingTable): StudyReading[] {
  const whole = complete(row);
  if (!whole || row.studyId === null) return [];
  const { run }: StudyRunNote = JSON.parse(whole.swab);
  return [{ ...whole.known, lotId: whole.lotId, studyId: row.studyId, run }];
}
