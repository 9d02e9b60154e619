import { AppError } from '../api/errors.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { isTurnedDown } from '../core/visit/turnedDown.ts';
import type { Adherence } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { type Course, listCourses, listCoursesOfVisit } from '../store/read/courses.ts';
import type { CourseRelease, CourseState, CourseTable, Db, VisitTable } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireDate } from './checks.ts';
import type { ActionContext } from './context.ts';

/** What became of one item of the plan. */
export interface ClosingCourse {
  readonly shelfItemId: string;
  readonly state: CourseState;
  /** Needed as the core computed it; a signature or a refusal that is there counts before it. */
  readonly release: 'not-needed' | 'waiting';
  readonly fromDate?: string | undefined;
  readonly toDate?: string | undefined;
  /** Why it was declined. */
  readonly reason?: string | undefined;
}

/**
 * Writes the courses of a visit that closes. Closing releases nothing: an item that needs a signature and has none can only wait or
 * be declined, and a signature that is there is kept.
 */
export async function writeCourses(
  trx: Db,
  { scope, newId }: Pick<ActionContext, 'scope' | 'newId'>,
  visit: Pick<VisitTable, 'id' | 'patientId'>,
  courses: readonly ClosingCourse[],
): Promise<CourseTable[]> {
  const shelf = new Map((await listCatalog(trx, scope, 'shelf-item')).map(({ id, body }) => [id, body]));
  const existing = new Map((await listCoursesOfVisit(trx, scope, visit.id)).map((course) => [course.shelfItemId, course]));
  const twice = courses.find(({ shelfItemId }, i) => courses.findIndex((other) => other.shelfItemId === shelfItemId) < i);
  if (twice) throw new AppError('INPUT_INVALID', `${twice.shelfItemId} stands in the plan twice.`);
  const written: CourseTable[] = [];
  for (const course of courses) {
    const before = existing.get(course.shelfItemId);
    const item = shelf.get(course.shelfItemId);
    if (!item) throw new AppError('SHELF_ITEM_NOT_FOUND', `There is no item ${course.shelfItemId} on the shelf.`);
    const columns = {
      ...datesOf(course),
      state: course.state,
      release: releaseAtClosing(course, item, before),
      reason: course.reason ?? null,
    };
    if (before) {
      const row = await updateRow(trx, scope, 'course', before, columns);
      if (!row) throw new ConflictError('An item of the plan', course, before);
      written.push(row);
    } else {
      const fresh = {
        id: newId(),
        patientId: visit.patientId,
        visitId: visit.id,
        shelfItemId: item.id,
        adherence: null,
        stopReason: null,
        signature: null,
        refusal: null,
      };
      written.push(...(await insertRows(trx, scope, 'course', [{ ...fresh, ...columns }])));
    }
  }
  return written;
}

/** Ends what still waits although the plan of the closing visit no longer holds it: its signature or refusal was taken back. */
export async function endLeftOver(
  trx: Db,
  scope: SiteScope,
  { id, onDate }: Pick<VisitTable, 'id' | 'onDate'>,
  closing: readonly ClosingCourse[],
): Promise<CourseTable[]> {
  const ended: CourseTable[] = [];
  for (const course of await listCoursesOfVisit(trx, scope, id)) {
    if (course.release !== 'waiting' || closing.some((c) => c.shelfItemId === course.shelfItemId)) continue;
    const row = await updateRow(trx, scope, 'course', course, { toDate: onDate, stopReason: 'not in the plan when the visit was closed' });
    if (!row) throw new ConflictError('An item of the plan', null, course);
    ended.push(row);
  }
  return ended;
}

function releaseAtClosing({ state, release }: ClosingCourse, item: ShelfItem, before: Course | undefined): CourseRelease {
  if (before?.signature) return 'signed';
  if (before?.refusal) return 'refused';
  if (release !== 'waiting' && item.release !== 'anyone' && !isTurnedDown(state))
    throw new AppError('SIGNATURE_MISSING', `${item.name} waits for a signature.`);
  return release === 'waiting' ? 'waiting' : 'not-needed';
}

/** What the person said of a course that was agreed earlier. */
export interface UsedCourse {
  readonly courseId: string;
  /** Absent = the course goes on in the plan of this visit and nothing was asked. */
  readonly adherence?: Adherence | undefined;
  readonly stopReason?: string | undefined;
  /** Last day; absent = it goes on. */
  readonly toDate?: string | undefined;
}

export async function writeUsed(trx: Db, scope: SiteScope, patientId: string, used: readonly UsedCourse[]): Promise<CourseTable[]> {
  const courses = new Map((await listCourses(trx, scope, patientId)).map((course) => [course.id, course]));
  const written: CourseTable[] = [];
  for (const { courseId, adherence, stopReason, toDate } of used) {
    const course = courses.get(courseId);
    if (!course) throw new AppError('INPUT_INVALID', `${courseId} is no item of this person.`);
    const columns = {
      adherence: adherence ?? course.adherence,
      stopReason: stopReason ?? course.stopReason,
      toDate: toDate === undefined ? course.toDate : requireDate('The last day of an item', toDate),
    };
    const row = await updateRow(trx, scope, 'course', course, columns);
    if (!row) throw new ConflictError('An item used before', columns, course);
    written.push(row);
  }
  return written;
}

function datesOf({ fromDate, toDate }: ClosingCourse): Pick<CourseTable, 'fromDate' | 'toDate'> {
  return {
    fromDate: fromDate === undefined ? null : requireDate('The first day of an item', fromDate),
    toDate: toDate === undefined ? null : requireDate('The last day of an item', toDate),
  };
}
