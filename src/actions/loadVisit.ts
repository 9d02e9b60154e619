import { AppError } from '../api/errors.ts';
import type { PastReading } from '../core/reading/types.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { withStock } from '../core/shelf/withStock.ts';
import type { Answer, Answers } from '../core/visit/answer.ts';
import type { DescribedDays } from '../core/visit/describedDays.ts';
import { isTurnedDown } from '../core/visit/turnedDown.ts';
import type { Adherence, Finding, PastCare, PastGoal, PastRhythm, PracticeFile, ReleasedAnswer, VisitInput } from '../core/visit/types.ts';
import { type Course, listCourses, listCoursesOfVisit } from '../store/read/courses.ts';
import { type Draft, readDraft } from '../store/read/draftFields.ts';
import { listFindings } from '../store/read/findings.ts';
import { findKeptPatient, type Patient } from '../store/read/patients.ts';
import { listReadings, type Reading } from '../store/read/readings.ts';
import { findConfirmedLevel } from '../store/read/results.ts';
import { findPractice } from '../store/read/sites.ts';
import { listCountedItems, listMovesOfVisit } from '../store/read/stock.ts';
import { listStudySwabs } from '../store/read/studyPeople.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import { findVisit, listVisits, type Visit } from '../store/read/visits.ts';
import type { Db, TaskTable } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { readControlSpans } from './readControlSpans.ts';

/** A visit as it stands in the store, put together as one assessment looks at it. */
export interface LoadedVisit {
  readonly visit: Visit;
  readonly patient: Patient;
  readonly input: VisitInput;
  /** Answers of earlier visits as they were carried into this one, before anything was said today. */
  readonly carried: Answers;
  readonly draft: Draft;
  /** Home care agreed or turned down at earlier visits, the newest course of each item. */
  readonly pastCourses: readonly Course[];
  readonly lastVisitOn: string | null;
  /** The newest visit before this one at which a day was told. */
  readonly earlierDay: { readonly visitId: string; readonly onDate: string; readonly told: DescribedDays } | null;
}

/** @throws AppError VISIT_NOT_FOUND, PATIENT_NOT_FOUND, SITE_NOT_FOUND */
export async function loadVisit(db: Db, scope: SiteScope, visitId: string): Promise<LoadedVisit> {
  const visit = await findVisit(db, scope, visitId);
  if (!visit) throw new AppError('VISIT_NOT_FOUND', 'This visit is not in the records of this practice.');
  const patient = await findKeptPatient(db, scope, visit.patientId);
  if (!patient) throw new AppError('PATIENT_NOT_FOUND', 'This person is not in the records of this practice.');
  const stored = await findPractice(db, scope);
  if (!stored) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');

  const earlier = (await listVisits(db, scope, patient.id)).filter((v) => v.state === 'closed' && v.id !== visit.id && isBefore(v, visit));
  const readings = await listReadings(db, scope, patient.id);
  const draft = await readDraft(db, scope, visitId);
  const carried = carryForward(earlier);
  const pastRhythm = carryRhythm(earlier);
  const said =
    visit.state === 'open'
      ? saidInDraft(draft, await carryFindings(db, scope, earlier.at(-1)))
      : await saidAtClosing(db, scope, visit, readings);
  const confirmed = await findConfirmedLevel(db, scope, visitId);
  const courses = await listCourses(db, scope, patient.id);
  const pastCourses = listPastCourses(courses, earlier, stored.practice.shelf);
  const tasks = await listTasksOfPatient(db, scope, patient.id);
  const counted = await withCount(db, scope, stored.practice, visit);
  const practice = visit.state === 'open' ? counted : withItsShelf(counted, courses, visit);
  const correctedOn = visit.said?.corrections?.at(-1)?.on;
  const ofVisit = courses.filter((course) => course.visitId === visitId);
  const controls = await readControlSpans(db, scope, visit.onDate);
  const studySwabs = (await listStudySwabs(db, scope, patient.id)).filter(isNotAfter(visit));
  const refused = ofVisit.flatMap(({ shelfItemId, refusal }) => (refusal ? [{ shelfItemId, ...refusal }] : []));
  const input: VisitInput = {
    practice,
    person: { name: patient.profile.name, birthDate: patient.birthDate, newPatient: earlier.length === 0, ...homesOf(patient) },
    visit: {
      meterId: stored.practice.meters[0]?.id,
      ...said,
      onDate: visit.onDate,
      language: said.language ?? patient.profile.language ?? carryLanguage(earlier) ?? 'en',
      answers: { ...carried, ...said.answers },
      pastReadings: listPastReadings(readings, new Set(earlier.map((v) => v.id))),
      ...(studySwabs.length === 0 ? {} : { studySwabs: studySwabs.map(({ takenAt }) => ({ takenAt })) }),
      ...(controls === undefined ? {} : { controls }),
      ...(confirmed === undefined ? {} : { confirmed }),
      signed: ofVisit.flatMap(({ signature }) => signature ?? []),
      ...(refused.length === 0 ? {} : { refused }),
      pastCare: pastCourses.map((course) => toPastCare(course, practice.shelf, earlier)),
      pastGoals: listPastGoals(tasks, visit, earlier),
      ...(pastRhythm === undefined ? {} : { pastRhythm }),
      ...(correctedOn === undefined ? {} : { correctedOn }),
    },
  };
  return {
    visit,
    patient,
    input,
    carried,
    draft,
    pastCourses,
    lastVisitOn: earlier.at(-1)?.onDate ?? null,
    earlierDay: findEarlierDay(earlier),
  };
}

/** What the newest visit before this one was in, so that a word at one visit holds until the person is asked. */
const carryLanguage = (earlier: readonly Visit[]) => earlier.findLast(({ said }) => said?.language !== undefined)?.said?.language;

function findEarlierDay(earlier: readonly Visit[]): LoadedVisit['earlierDay'] {
  const newest = earlier.findLast(({ said }) => said?.acidDay !== undefined);
  return newest?.said?.acidDay ? { visitId: newest.id, onDate: newest.onDate, told: newest.said.acidDay } : null;
}

/** What was said and seen at this visit itself; the rest of the input is looked up. */
type Said = Omit<
  VisitInput['visit'],
  | 'onDate'
  | 'language'
  | 'pastReadings'
  | 'studySwabs'
  | 'controls'
  | 'pastCare'
  | 'pastGoals'
  | 'pastRhythm'
  | 'confirmed'
  | 'signed'
  | 'refused'
> & {
  readonly language?: VisitInput['visit']['language'];
};

const homesOf = ({ profile: { homes } }: Patient) => (homes === undefined || homes.length === 0 ? {} : { homes });

function isBefore(a: Visit, b: Visit): boolean {
  return a.onDate < b.onDate || (a.onDate === b.onDate && a.id < b.id);
}

const DAY_MS = 86_400_000;

/** A closed visit knows nothing of a swab of later days. Its date is the practice's and the time is UTC, so a day more is let in. */
const isNotAfter =
  ({ onDate }: Visit) =>
  ({ takenAt }: { readonly takenAt: string }): boolean =>
    Date.parse(takenAt.slice(0, 10)) - Date.parse(onDate) <= DAY_MS;

/** The newest known answer to each question, dated by the day it was asked. An unknown one never hides an older known one: its date tells its age. */
export function carryForward(earlier: readonly Pick<Visit, 'answers' | 'onDate'>[]): Answers {
  const carried: Record<string, Answer> = {};
  for (const { answers, onDate } of earlier) {
    for (const [question, answer] of Object.entries(answers ?? {})) {
      if (answer.value === undefined) continue;
      const { value, alone } = answer;
      carried[question] = { how: 'carried', value, askedOn: answer.askedOn ?? onDate, ...(alone && { alone }) };
    }
  }
  return carried;
}

/** How the days ran, from the newest visit at which that was said. */
function carryRhythm(earlier: readonly Visit[]): PastRhythm | undefined {
  const newest = earlier.findLast(({ said }) => said?.agreed?.rhythm !== undefined);
  const rhythm = newest?.said?.agreed?.rhythm;
  return newest && rhythm && { rhythm, askedOn: newest.onDate };
}

/** What was found at the last visit is there until somebody looks again, and is no longer new. */
async function carryFindings(db: Db, scope: SiteScope, last: Visit | undefined): Promise<readonly Finding[]> {
  return last ? (await listFindings(db, scope, last.id)).map((finding) => ({ ...finding, isNew: false })) : [];
}

/** Draft fields are checked against their schema before they are saved, so their shape is known here. */
function saidInDraft({ fields }: Draft, carriedFindings: readonly Finding[]): Said {
  const answers: Record<string, Answer> = {};
  const released: Record<string, ReleasedAnswer> = {};
  const rest: Record<string, unknown> = {};
  for (const { path, value } of fields) {
    const [first = '', question] = path.split('.');
    // Taken out again.
    if (value === null) continue;
    if (first === 'answers' && question !== undefined) answers[question] = value as Answer;
    else if (first === 'released' && question !== undefined) released[question] = value as ReleasedAnswer;
    else rest[first] = value;
  }
  return { findings: carriedFindings, ...(rest as Partial<Said>), ...(Object.keys(released).length > 0 && { released }), answers };
}

async function saidAtClosing(db: Db, scope: SiteScope, visit: Visit, readings: readonly Reading[]): Promise<Said> {
  const reading = readings.find((r) => r.visitId === visit.id && r.use === 'patient');
  const { corrections: _, ...said } = visit.said ?? { agreed: agreedIn(await listCoursesOfVisit(db, scope, visit.id)) };
  return {
    ...said,
    answers: visit.answers ?? {},
    findings: await listFindings(db, scope, visit.id),
    ...(visit.allExamined === null ? {} : { allExamined: visit.allExamined }),
    ...(reading?.swab ? { reading: reading.swab } : {}),
    ...(reading?.meterId ? { meterId: reading.meterId } : {}),
  };
}

/** What was said to each item, for a visit that was closed before the record kept all that was said. */
function agreedIn(courses: readonly Course[]): NonNullable<Said['agreed']> {
  const said = courses.flatMap(({ shelfItemId, state, reason }) => (state === 'offered' ? [] : [{ shelfItemId, state, reason }]));
  return {
    items: Object.fromEntries(said.map(({ shelfItemId, state }) => [shelfItemId, state])),
    declinedWhy: Object.fromEntries(said.flatMap(({ shelfItemId, reason }) => (reason === null ? [] : [[shelfItemId, reason]]))),
  };
}

function listPastReadings(readings: readonly Reading[], earlierVisitIds: ReadonlySet<string>): PastReading[] {
  return readings.flatMap(({ visitId, use, takenAt, rlu, bound, state, meterId, operator, lotId }) => {
    const hasNumber = state === 'valid' || state === 'flagged' || state === 'void';
    if (use !== 'patient' || visitId === null || !earlierVisitIds.has(visitId)) return [];
    if (!hasNumber || takenAt === null || rlu === null || meterId === null) return [];
    const known = { ...(operator !== null && { operator }), ...(lotId !== null && { lotId }) };
    return [{ takenAt, rlu, bound: bound ?? 'exact', state, meterId, ...known }];
  });
}

/** What was agreed, released and for use at home, or turned down, at visits before this one: the newest word on each item. */
function listPastCourses(courses: readonly Course[], earlier: readonly Visit[], shelf: readonly ShelfItem[]): Course[] {
  const visitIds = new Set(earlier.map((visit) => visit.id));
  const isAtHome = (id: string) => shelf.find((item) => item.id === id)?.use.atVisit !== true;
  const said = courses.filter(({ visitId, shelfItemId, state, release }) => {
    const isUsed = state === 'agreed' && isAtHome(shelfItemId) && (release === 'not-needed' || release === 'signed');
    return visitId !== null && visitIds.has(visitId) && (isUsed || isTurnedDown(state));
  });
  // Oldest first, so that the newest course of an item is the one that stays.
  return [...new Map(said.map((course) => [course.shelfItemId, course])).values()];
}

function toPastCare(course: Course, shelf: readonly ShelfItem[], earlier: readonly Visit[]): PastCare {
  const { shelfItemId, visitId, state, fromDate, toDate, adherence, stopReason, reason } = course;
  const why = stopReason ?? (isTurnedDown(state) ? reason : null);
  return {
    shelfItemId,
    name: shelf.find((item) => item.id === shelfItemId)?.name ?? shelfItemId,
    // What was turned down never began: it is dated by its visit.
    since: fromDate ?? earlier.find((visit) => visit.id === visitId)?.onDate ?? '',
    ...(isTurnedDown(state) ? { turnedDown: state } : {}),
    ...(toDate === null ? {} : { until: toDate }),
    ...(adherence === null ? {} : { adherence: adherence as Adherence }),
    ...(why === null ? {} : { stopReason: why }),
  };
}

/** Goals still open; of a closed visit, those that it spoke of. */
function listPastGoals(tasks: readonly TaskTable[], visit: Visit, earlier: readonly Visit[]): PastGoal[] {
  const spokenOf = visit.said?.goalsSince ?? {};
  return tasks.flatMap(({ id, kind, state, note, visitId }): PastGoal[] => {
    const of = earlier.find((other) => other.id === visitId);
    const isHere = visit.state === 'open' ? state === 'open' : Object.hasOwn(spokenOf, id);
    return kind === 'goal' && of && isHere && note !== null ? [{ id, text: note, since: of.onDate }] : [];
  });
}

/** In stock is what can be given on the day of the visit, where the practice counts its packs. */
async function withCount(db: Db, scope: SiteScope, practice: PracticeFile, { id, onDate }: Visit): Promise<PracticeFile> {
  const counted = await listCountedItems(db, scope);
  if (counted.length === 0) return practice;
  const given = (await listMovesOfVisit(db, scope, id)).filter(({ takenBack }) => takenBack === null);
  const shelf = withStock(practice.shelf, counted, { onDate, givenHere: given.map(({ shelfItemId }) => shelfItemId) });
  return { ...practice, shelf };
}

/** What a closed visit spoke of was there then, whatever is in stock today. */
function withItsShelf(practice: PracticeFile, courses: readonly Course[], visit: Visit): PracticeFile {
  const spokenOf = new Set(courses.filter((course) => course.visitId === visit.id).map((course) => course.shelfItemId));
  return { ...practice, shelf: practice.shelf.map((item) => (spokenOf.has(item.id) ? { ...item, inStock: true } : item)) };
}
