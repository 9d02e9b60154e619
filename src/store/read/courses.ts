import type { SignedItem } from '../../core/regimen/types.ts';
import type { CourseTable, Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type Course = Omit<CourseTable, 'siteId' | 'signature'> & { readonly signature: SignedItem | null };

/** Of one person, oldest first. */
export async function listCourses(db: Db, scope: SiteScope, patientId: string): Promise<Course[]> {
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('patientId', '=', patientId);
  return (await query.orderBy('id').execute()).map(toCourse);
}

export async function listCoursesOfVisit(db: Db, scope: SiteScope, visitId: string): Promise<Course[]> {
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return (await query.orderBy('id').execute()).map(toCourse);
}

/** Items of the whole practice that wait for a signature, oldest first. */
export async function listWaitingCourses(db: Db, scope: SiteScope): Promise<Course[]> {
  const query = db.selectFrom('course').selectAll().where('siteId', '=', scope.siteId).where('state', '=', 'waiting');
  return (await query.orderBy('id').execute()).map(toCourse);
}

function toCourse({ siteId: _siteId, signature, ...row }: CourseTable): Course {
  return { ...row, signature: signature === null ? null : JSON.parse(signature) };
}
