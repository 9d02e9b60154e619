import type { FollowedReading } from '../../core/meter/followedReadings.ts';
import type { Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { listChartsOf } from './charts.ts';

/**
 * Every counted reading of one meter, with what closed visits after it saw of the teeth. A new lesion counts from the day after the
 * reading. A visit at which not all teeth were looked at follows nobody up, but a new lesion found there counts.
 * @param onDateOf  local date of a moment, in the practice's zone
 */
export async function listFollowedReadings(
  db: Db,
  scope: SiteScope,
  { meterId, onDateOf }: { readonly meterId: string; readonly onDateOf: (utc: string) => string },
): Promise<FollowedReading[]> {
  const personOf = await listPeople(db, scope);
  const looks = await listLooks(db, scope, personOf);
  const rows = await db
    .selectFrom('reading')
    .select(['patientId', 'rlu', 'takenAt'])
    .where('siteId', '=', scope.siteId)
    .where('use', '=', 'patient')
    .where('meterId', '=', meterId)
    .where('state', 'in', ['valid', 'flagged'])
    .where('rlu', '>', 0)
    .where('takenAt', 'is not', null)
    .execute();
  return rows.flatMap(({ patientId, rlu, takenAt }) => {
    if (patientId === null || rlu === null || takenAt === null) return [];
    const personId = personOf.get(patientId) ?? patientId;
    const takenOn = onDateOf(takenAt);
    const after = (looks.get(personId) ?? []).filter(({ onDate }) => onDate > takenOn);
    const newLesionOn = after.find(({ hasNewLesion }) => hasNewLesion)?.onDate;
    const followedUntil = after.findLast(({ isWhole }) => isWhole)?.onDate;
    return [{ personId, takenOn, rlu, ...(newLesionOn && { newLesionOn }), ...(followedUntil && { followedUntil }) }];
  });
}

async function listPeople(db: Db, scope: SiteScope): Promise<ReadonlyMap<string, string>> {
  const query = db.selectFrom('patient').select('id').where('siteId', '=', scope.siteId).where('mergedInto', 'is', null);
  return listChartsOf(
    db,
    scope,
    (await query.execute()).map(({ id }) => id),
  );
}

interface Look {
  readonly onDate: string;
  readonly hasNewLesion: boolean;
  readonly isWhole: boolean;
}

/** Of each person, oldest first. */
async function listLooks(db: Db, scope: SiteScope, personOf: ReadonlyMap<string, string>): Promise<ReadonlyMap<string, readonly Look[]>> {
  const withLesion = await db
    .selectFrom('finding')
    .select('visitId')
    .distinct()
    .where('siteId', '=', scope.siteId)
    .where('isNew', '=', 1)
    .where('caries', 'is not', null)
    .where('voidReason', 'is', null)
    .execute();
  const lesionAt = new Set(withLesion.map(({ visitId }) => visitId));
  const visits = await db
    .selectFrom('visit')
    .select(['id', 'patientId', 'onDate', 'allExamined'])
    .where('siteId', '=', scope.siteId)
    .where('state', '=', 'closed')
    .orderBy('onDate')
    .execute();
  const looks = new Map<string, Look[]>();
  for (const { id, patientId, onDate, allExamined } of visits) {
    const personId = personOf.get(patientId) ?? patientId;
    const look = { onDate, hasNewLesion: lesionAt.has(id), isWhole: allExamined === 1 };
    looks.set(personId, [...(looks.get(personId) ?? []), look]);
  }
  return looks;
}
