import { AppError } from '../api/errors.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { ConflictError } from '../store/errors.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { type Course, listCoursesOfVisit } from '../store/read/courses.ts';
import type { CourseState, CourseTable, Db, VisitTable } from '../store/schema.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { requireDate } from './checks.ts';
import type { ActionContext } from './context.ts';

/** What became of one item of the plan. */
export interface ClosingCourse {
  readonly shelfItemId: string;
  readonly state: CourseState;
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
    const columns = { ...datesOf(course), state: stateAtClosing(course, item, before), reason: course.reason ?? null };
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
      };
      written.push(...(await insertRows(trx, scope, 'course', [{ ...fresh, ...columns }])));
    }
  }
  return written;
}

function stateAtClosing({ state }: ClosingCourse, item: ShelfItem, before: Course | undefined): CourseState {
  const isSigned = before?.signature != null;
  if (isSigned) return state === 'waiting' ? 'signed' : state;
  const isReleased = state === 'signed' || (item.release !== 'anyone' && (state === 'offered' || state === 'agreed'));
  if (isReleased) throw new AppError('SIGNATURE_MISSING', `${item.name} waits for a signature.`);
  return state;
}

function datesOf({ fromDate, toDate }: ClosingCourse): Pick<CourseTable, 'fromDate' | 'toDate'> {
  return {
    fromDate: fromDate === undefined ? null : requireDate('The first day of an item', fromDate),
    toDate: toDate === undefined ? null : requireDate('The last day of an item', toDate),
  };
}
