import type { VisitCorrection } from '../core/visit/correction.ts';
import type { Finding, VisitAssessment, VisitInput } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import { columnsToFinding, findingToColumns } from '../store/findingColumns.ts';
import { listCoursesOfVisit } from '../store/read/courses.ts';
import { listFindingRows } from '../store/read/findings.ts';
import { findReadingOfVisit } from '../store/read/readings.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import type { CourseTable, Db } from '../store/schema.ts';
import { insertRows, updateRow } from '../store/write/rows.ts';
import { type ClosingCourse, writeCourses } from './closingCourses.ts';
import { readingRow } from './closingReading.ts';
import { listClosingCourses, nextDate } from './closingSaid.ts';
import type { ActionContext, ChangeLog } from './context.ts';
import type { LoadedVisit } from './loadVisit.ts';

/** One correction on its way into the rows of its visit. */
export interface Correcting {
  readonly trx: Db;
  readonly log: ChangeLog;
  readonly context: ActionContext;
  readonly loaded: LoadedVisit;
  /** As corrected. */
  readonly input: VisitInput;
  readonly assessment: VisitAssessment;
  readonly correction: VisitCorrection;
}

const keyOf = ({ tooth, surface, kind, activity, isNew }: Finding) => JSON.stringify([tooth, surface, kind, activity, isNew]);

/** A finding that is no longer there was noted by mistake and says so; one that differs is that and a new one. */
export async function correctFindings({ trx, log, context, loaded, input, correction }: Correcting): Promise<void> {
  const { scope, newId } = context;
  const wanted = input.visit.findings.map(keyOf);
  for (const row of await listFindingRows(trx, scope, loaded.visit.id)) {
    if (row.voidReason !== null) continue;
    const at = wanted.indexOf(keyOf(columnsToFinding(row)));
    if (at >= 0) {
      wanted.splice(at, 1);
      continue;
    }
    const voided = await updateRow(trx, scope, 'finding', row, { voidReason: correction.reason });
    if (!voided) throw new ConflictError('A finding', correction.reason, row);
    log.row('finding', voided, correction.reason);
  }
  const added = input.visit.findings.filter((finding) => {
    const at = wanted.indexOf(keyOf(finding));
    if (at >= 0) wanted.splice(at, 1);
    return at >= 0;
  });
  const rows = added.map((finding) => ({
    id: newId(),
    visitId: loaded.visit.id,
    missingReason: null,
    voidReason: null,
    ...findingToColumns(finding),
  }));
  for (const row of await insertRows(trx, scope, 'finding', rows)) log.row('finding', row, correction.reason);
}

/** The number, how it was taken, or that it was noted by mistake: then no number and no time stay, and nothing counts it. */
export async function correctReading({ trx, log, context, loaded, input, assessment, correction }: Correcting): Promise<void> {
  const { scope, newId } = context;
  const { id: visitId, patientId } = loaded.visit;
  const before = await findReadingOfVisit(trx, scope, visitId);
  const { reading, meterId } = input.visit;
  if (!reading && !before) return;
  const { id, ...columns } = reading
    ? readingRow(
        before?.id ?? newId(),
        { visitId, patientId: before?.patientId ?? patientId },
        { swab: reading, assessed: assessment.reading, meterId },
      )
    : { id: before?.id ?? newId(), ...NOTED_BY_MISTAKE };
  if (before) {
    const row = await updateRow(trx, scope, 'reading', before, columns);
    if (!row) throw new ConflictError('The reading', reading, before);
    log.row('reading', row, correction.reason);
  } else if (reading) {
    const fresh = readingRow(id, { visitId, patientId }, { swab: reading, assessed: assessment.reading, meterId });
    for (const row of await insertRows(trx, scope, 'reading', [fresh])) log.row('reading', row, correction.reason);
  }
}

const NOTED_BY_MISTAKE = {
  lotId: null,
  operator: null,
  takenAt: null,
  rlu: null,
  bound: null,
  state: 'not-taken',
  reasons: JSON.stringify(['noted by mistake']),
  swab: null,
} as const;

/**
 * The items of the visit by what was corrected. One that the corrected plan no longer holds ends with the correction; dates that a
 * later visit gave stay.
 */
export async function correctCourses(correcting: Correcting): Promise<void> {
  const { correction } = correcting;
  if (correction.changes.some(({ path }) => !BESIDES_PLAN.has(path))) await correctPlan(correcting);
  if (correction.changes.some(({ path }) => path === 'used')) await correctUsed(correcting);
}

/** Fields that say nothing of what belongs in the plan. */
const BESIDES_PLAN: ReadonlySet<string> = new Set(['stopUsing', 'nextOn', 'language', 'speaker', 'goals', 'goalsSince', 'used']);

async function correctPlan(correcting: Correcting): Promise<void> {
  const { trx, log, context, loaded, input, assessment, correction } = correcting;
  const { scope } = context;
  const before = new Map((await listCoursesOfVisit(trx, scope, loaded.visit.id)).map((course) => [course.shelfItemId, course]));
  const courses = listClosingCourses(assessment, input.visit).map((course): ClosingCourse => {
    const there = before.get(course.shelfItemId);
    return { ...course, fromDate: course.fromDate && (there?.fromDate ?? course.fromDate), toDate: there?.toDate ?? undefined };
  });
  const isSame = (row: ClosingCourse) => {
    const there = before.get(row.shelfItemId);
    const isSettled = there?.release === row.release || there?.signature !== null || there.refusal !== null;
    return there?.state === row.state && (there.reason ?? undefined) === row.reason && isSettled;
  };
  const written = await writeCourses(
    trx,
    context,
    loaded.visit,
    courses.filter((course) => !isSame(course)),
  );
  for (const row of written) log.row('course', row, correction.reason);
  for (const course of before.values()) {
    const isPlanned = courses.some(({ shelfItemId }) => shelfItemId === course.shelfItemId);
    if (isPlanned || course.toDate !== null) continue;
    await endCourse(correcting, course);
  }
}

async function endCourse({ trx, log, context, correction }: Correcting, course: { id: string; version: number }): Promise<void> {
  const ended: Partial<CourseTable> = { toDate: correction.on, stopReason: `taken out by a correction: ${correction.reason}` };
  const row = await updateRow(trx, context.scope, 'course', course, ended);
  if (!row) throw new ConflictError('An item of the plan', ended, course);
  log.row('course', row, correction.reason);
}

/** What became of earlier items, where that was corrected: an end that this visit gave is taken back or given. */
async function correctUsed({ trx, log, context, loaded, input, correction }: Correcting): Promise<void> {
  const { used = {}, onDate } = input.visit;
  const { used: before = {} } = loaded.input.visit;
  for (const course of loaded.pastCourses) {
    const said = used[course.shelfItemId];
    if (JSON.stringify(said) === JSON.stringify(before[course.shelfItemId])) continue;
    const ends = said?.adherence === 'stopped' || said?.adherence === 'not-begun';
    const reopened = course.toDate === onDate ? null : course.toDate;
    const columns = { adherence: said?.adherence ?? null, stopReason: said?.why ?? null, toDate: ends ? onDate : reopened };
    const row = await updateRow(trx, context.scope, 'course', course, columns);
    if (!row) throw new ConflictError('An item used before', columns, course);
    log.row('course', row, correction.reason);
  }
}

/** The next date moves while it is still ahead; a recall that was answered since stays as it was. */
export async function correctTasks({ trx, log, context, loaded, input, assessment, correction }: Correcting): Promise<void> {
  const due = nextDate(assessment.plan, input.visit);
  const { goals = [], goalsSince = {} } = input.visit;
  for (const task of await listTasksOfPatient(trx, context.scope, loaded.visit.patientId)) {
    const isOwn = task.visitId === loaded.visit.id && task.state === 'open';
    const isGone = isOwn && task.kind === 'goal' && !goals.includes(task.note ?? '');
    const said = task.kind === 'goal' && correction.changes.some(({ path }) => path === 'goalsSince') ? goalsSince[task.id] : undefined;
    const state = said === 'reached' ? 'done' : isGone || said === 'dropped' ? 'dropped' : said === 'still-on' ? 'open' : task.state;
    const moved = isOwn && task.kind === 'recall' && due !== null ? due : task.due;
    if (state === task.state && moved === task.due) continue;
    const row = await updateRow(trx, context.scope, 'task', task, { state, due: moved });
    if (!row) throw new ConflictError('A task', { state, due: moved }, task);
    log.row('task', row, correction.reason);
  }
  await addTasks({ trx, log, context, loaded, input, correction }, due);
}

/** A next date where there was none, and goals that were left out. */
async function addTasks(
  { trx, log, context, loaded, input, correction }: Omit<Correcting, 'assessment'>,
  due: string | null,
): Promise<void> {
  const { scope, newId } = context;
  const { id: visitId, patientId } = loaded.visit;
  const there = (await listTasksOfPatient(trx, scope, patientId)).filter((task) => task.visitId === visitId);
  const isThere = (kind: string, note?: string) => there.some((task) => task.kind === kind && (note === undefined || task.note === note));
  const base = { patientId, visitId, state: 'open' } as const;
  const recall = due === null || isThere('recall') ? [] : [{ id: newId(), ...base, kind: 'recall' as const, due, note: null }];
  const isChanged = correction.changes.some(({ path }) => path === 'goals');
  const goals = (isChanged ? (input.visit.goals ?? []) : [])
    .filter((note) => !isThere('goal', note))
    .map((note) => ({ id: newId(), ...base, kind: 'goal' as const, due: due ?? input.visit.onDate, note }));
  for (const row of await insertRows(trx, scope, 'task', [...recall, ...goals])) log.row('task', row, correction.reason);
}
