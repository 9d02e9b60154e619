import { group } from 'd3-array';
import { carryForward } from '../../actions/loadVisit.ts';
import type { ConfirmedLevel } from '../../core/regimen/types.ts';
import { ageOn } from '../../core/visit/ageOn.ts';
import type { Answer, Answers } from '../../core/visit/answer.ts';
import { listChartsOf } from '../../store/read/charts.ts';
import { type Course, listCoursesOfCharts } from '../../store/read/courses.ts';
import { listDraftFieldsOfVisits } from '../../store/read/draftFields.ts';
import { listPatientsById, type Patient } from '../../store/read/patients.ts';
import { listConfirmedLevels } from '../../store/read/results.ts';
import { listOpenTasksOfCharts } from '../../store/read/tasks.ts';
import { listVisitsOfCharts, type Visit } from '../../store/read/visits.ts';
import type { Db, TaskTable } from '../../store/schema.ts';
import type { SiteScope } from '../../store/siteScope.ts';

/** Somebody of a day, with everything on record that says what is due; the charts merged into this one count too. */
export interface DayPerson {
  readonly patient: Patient;
  readonly ageYears: number;
  /** Oldest first. */
  readonly visits: readonly Visit[];
  readonly open: Visit | undefined;
  /** The last one that was closed before the day. */
  readonly last: Visit | undefined;
  readonly courses: readonly Course[];
  readonly tasks: readonly TaskTable[];
  /** Newest level that a professional confirmed, and the day of that visit. */
  readonly confirmed: (ConfirmedLevel & { readonly onDate: string; readonly visitId: string }) | undefined;
  /** As they stand at the beginning of a visit on the day; an open visit adds what was said in it. */
  readonly answers: Answers;
}

/** One query for each kind of row, however many people the day has. By chart id: that of a merged chart leads to the person too. */
export async function readDayPeople(
  db: Db,
  scope: SiteScope,
  chartIds: readonly string[],
  onDate: string,
): Promise<ReadonlyMap<string, DayPerson>> {
  const patients = await listStandingCharts(db, scope, chartIds);
  const personOf = await listChartsOf(db, scope, [...new Set([...patients.values()].map(({ id }) => id))]);
  const charts = [...personOf.keys()];
  const ofPerson = <T extends { readonly patientId: string }>(rows: readonly T[]) =>
    group(rows, (row) => personOf.get(row.patientId) ?? '');
  const visits = await listVisitsOfCharts(db, scope, charts);
  const visitIds = visits.map(({ id }) => id);
  const levels = await listConfirmedLevels(db, scope, visitIds);
  const drafts = group(
    await listDraftFieldsOfVisits(
      db,
      scope,
      visits.filter(({ state }) => state === 'open').map(({ id }) => id),
    ),
    ({ visitId }) => visitId,
  );
  const visitsOf = ofPerson(visits);
  const coursesOf = ofPerson(await listCoursesOfCharts(db, scope, charts));
  const tasksOf = ofPerson(await listOpenTasksOfCharts(db, scope, charts));
  const toPerson = (patient: Patient): DayPerson => {
    const all = visitsOf.get(patient.id) ?? [];
    const closed = all.filter(({ state, onDate: on }) => state === 'closed' && on <= onDate);
    const open = all.find(({ state }) => state === 'open');
    const leveled = all.findLast(({ id, onDate: on }) => on <= onDate && levels.has(id));
    const level = leveled && levels.get(leveled.id);
    return {
      patient,
      ageYears: patient.birthDate > onDate ? 0 : ageOn(patient.birthDate, onDate).ageYears,
      visits: all,
      open,
      last: closed.findLast(({ onDate: on }) => on < onDate) ?? closed.at(-1),
      courses: coursesOf.get(patient.id) ?? [],
      tasks: tasksOf.get(patient.id) ?? [],
      confirmed: leveled && level && { ...level, onDate: leveled.onDate, visitId: leveled.id },
      answers: { ...carryForward(closed), ...draftAnswers(open ? (drafts.get(open.id) ?? []) : []) },
    };
  };
  const people = new Map<string, DayPerson>();
  for (const patient of new Set(patients.values())) people.set(patient.id, toPerson(patient));
  return new Map([...patients].flatMap(([chartId, { id }]) => (people.get(id) ? [[chartId, people.get(id) as DayPerson] as const] : [])));
}

/** Where a chart was merged into another, the one that stands. */
async function listStandingCharts(db: Db, scope: SiteScope, chartIds: readonly string[]): Promise<ReadonlyMap<string, Patient>> {
  const read = new Map<string, Patient>();
  let wanted: readonly string[] = [...new Set(chartIds)];
  while (wanted.length > 0) {
    for (const patient of await listPatientsById(db, scope, wanted)) read.set(patient.id, patient);
    wanted = [...read.values()].flatMap(({ mergedInto }) => (mergedInto !== null && !read.has(mergedInto) ? [mergedInto] : []));
  }
  const standing = (id: string): Patient | undefined => {
    const patient = read.get(id);
    return patient?.mergedInto ? standing(patient.mergedInto) : patient;
  };
  return new Map(
    chartIds.flatMap((id) => {
      const patient = standing(id);
      return patient ? [[id, patient] as const] : [];
    }),
  );
}

/** Draft fields are checked against their schema before they are saved, so their shape is known here. */
function draftAnswers(fields: readonly { readonly path: string; readonly value: unknown }[]): Answers {
  const answers: Record<string, Answer> = {};
  for (const { path, value } of fields) {
    const [first, question] = path.split('.');
    if (first === 'answers' && question !== undefined && value !== null) answers[question] = value as Answer;
  }
  return answers;
}
