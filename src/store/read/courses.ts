import type { SignedItem } from '../../core/regimen/types.ts';
import type { CourseTable, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import type { Refusal } from '../storedJson.ts';
import { isOfChart } from './charts.ts';
import { sortedBy } from './sortedBy.ts';

export type Course = Omit<CourseTable, 'siteId' | 'signature' | 'refusal'> & {
  readonly signature: SignedItem | null;
  readonly refusal: Refusal | null;
};

/** Of one person, the charts merged into this one included, oldest first. */
export async function listCourses(db: Db, scope: SiteScope, patientId: string): Promise<Course[]> {
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where(isOfChart(scope, patientId));
  return (await query.orderBy(sortedBy('id')).execute()).map(toCourse);
}

/** Of several charts, oldest first. */
export async function listCoursesOfCharts(db: Db, scope: SiteScope, chartIds: readonly string[]): Promise<Course[]> {
  if (chartIds.length === 0) return [];
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('patientId', 'in', chartIds);
  return (await query.orderBy(sortedBy('id')).execute()).map(toCourse);
}

export async function listCoursesOfVisit(db: Db, scope: SiteScope, visitId: string): Promise<Course[]> {
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return (await query.orderBy(sortedBy('id')).execute()).map(toCourse);
}

/** Items of the whole practice that wait for a signature, oldest first. */
export async function listWaitingCourses(db: Db, scope: SiteScope): Promise<Course[]> {
  const waiting = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('release', '=', 'waiting');
  // One that the plan no longer held when its visit closed has ended.
  const query = waiting.where('toDate', 'is', null);
  return (await query.orderBy(sortedBy('id')).execute()).map(toCourse);
}

function toCourse({ siteId: _siteId, signature, refusal, ...row }: CourseTable): Course {
  return { ...row, signature: parseOrNull(signature), refusal: parseOrNull(refusal) };
}

const parseOrNull = (text: string | null) => (text === null ? null : JSON.parse(text));
