import { keepByTable } from '../keep/keepByTable.ts';
import { findDayProblems } from '../plaque/day/findDayProblems.ts';
import type { Food } from '../plaque/day/types.ts';
import type { SwabReading } from '../reading/types.ts';
import { ageOn } from './ageOn.ts';
import type { Answer, AnswerValue } from './answer.ts';
import { daysBetween } from './calendar.ts';
import { isDateOrMonth } from './dateOrMonth.ts';
import type { DescribedDays } from './describedDays.ts';
import type { Question } from './question.ts';
import type { PracticeFile, VisitInput } from './types.ts';

/** One thing wrong with a visit: where it stands in the visit file, and what is wrong, as the end of a sentence that the path begins. */
export interface VisitProblem {
  readonly path: string;
  readonly message: string;
}

const OLDEST_AGE_YEARS = 120;
/** A time carries its own offset, the visit's date is local: the two calendars may differ by a day. */
const CALENDAR_SLACK_DAYS = 1;

/**
 * What a schema cannot see: fields that each have the right shape and contradict each other, the practice, or the list of questions.
 * An expired lot or a swab after polishing is no problem here: such a reading is recorded and not counted.
 * @param input      a visit whose fields already have the right types
 * @param questions  every question that may be answered, any age
 * @param foods      every food that a described day may name, by id
 * @returns every problem, in the order of the visit file; empty when there is none
 */
export function checkVisit(input: VisitInput, questions: readonly Question[], foods: ReadonlyMap<string, Food>): readonly VisitProblem[] {
  return [
    ...checkPractice(input.practice),
    ...checkDates(input),
    ...checkAnswers(input, questions),
    ...checkReading(input),
    ...checkPlan(input),
    ...checkDays(input.visit.acidDay, foods),
  ];
}

/** A practice stays for many visits; like a table it is never changed, another state of it is another object. */
const checkPractice = keepByTable((practice: PracticeFile): readonly VisitProblem[] => {
  return [...findTwice('meters', practice.meters), ...findTwice('lots', practice.lots), ...findTwice('shelf', practice.shelf)];
});

function findTwice(list: 'meters' | 'lots' | 'shelf', rows: readonly { readonly id: string }[]): VisitProblem[] {
  const seen = new Set<string>();
  const problems: VisitProblem[] = [];
  for (const [i, { id }] of rows.entries()) {
    if (seen.has(id)) problems.push({ path: `practice.${list}.${i}.id`, message: `"${id}" stands there twice` });
    seen.add(id);
  }
  return problems;
}

function checkDates({ person, visit }: VisitInput): VisitProblem[] {
  const { birthDate } = person;
  const { onDate, nextOn } = visit;
  const problems: VisitProblem[] = [];
  if (birthDate > onDate) {
    problems.push({ path: 'person.birthDate', message: `${birthDate} is after the visit on ${onDate}` });
  } else if (ageOn(birthDate, onDate).ageYears > OLDEST_AGE_YEARS) {
    problems.push({ path: 'person.birthDate', message: `${birthDate} makes the person older than ${OLDEST_AGE_YEARS} years` });
  }
  if (nextOn !== undefined && nextOn < onDate) {
    problems.push({ path: 'visit.nextOn', message: `${nextOn} is before the visit on ${onDate}` });
  }
  for (const message of checkAskedOn(visit.pastRhythm, birthDate, onDate)) problems.push({ path: 'visit.pastRhythm.askedOn', message });
  return problems;
}

function checkAnswers({ person, visit }: VisitInput, questions: readonly Question[]): VisitProblem[] {
  const questionById = questionsById(questions);
  const days = { birthDate: person.birthDate, onDate: visit.onDate };
  const problems: VisitProblem[] = [];
  for (const [id, answer] of Object.entries(visit.answers)) {
    const question = questionById.get(id);
    const say = (field: string, message: string) => problems.push({ path: `visit.answers.${id}${field}`, message });
    if (!question) {
      say('', 'is not a question of this edition');
      continue;
    }
    if (answer.value !== undefined) for (const message of checkValue(question, answer.value, days)) say('.value', message);
    for (const message of checkAskedOn(answer, person.birthDate, visit.onDate)) say('.askedOn', message);
  }
  return problems;
}

const questionsById = keepByTable(
  (questions: readonly Question[]): ReadonlyMap<string, Question> => new Map(questions.map((question) => [question.id, question])),
);

function checkAskedOn({ askedOn }: Pick<Answer, 'askedOn'> = {}, birthDate: string, onDate: string): string[] {
  if (askedOn === undefined) return [];
  if (askedOn > onDate) return [`${askedOn} is after the visit on ${onDate}`];
  return askedOn < birthDate ? [`${askedOn} is before the birth on ${birthDate}`] : [];
}

/** What is wrong with this value as an answer to this question; empty when nothing is. */
function checkValue(question: Question, value: AnswerValue, days: { readonly birthDate: string; readonly onDate: string }): string[] {
  switch (question.kind) {
    case 'yes-no':
      return typeof value === 'boolean' ? [] : ['must be true or false'];
    case 'count':
      return typeof value === 'number' && Number.isInteger(value) && value >= 0 ? checkRange(question, value) : ['must be a whole number'];
    case 'measure':
      return typeof value === 'number' && Number.isFinite(value) ? checkRange(question, value) : ['must be a number'];
    case 'choice':
      return typeof value === 'string' ? checkChoices(question, [value]) : ['must be one of the choices, by its id'];
    case 'list':
      return Array.isArray(value) ? checkChoices(question, value) : ['must be a list; an empty list means asked and none'];
    case 'date':
      return typeof value === 'string' ? checkDateValue(question, value, days) : [NO_DATE];
  }
}

const NO_DATE = 'must be a date like 2026-11-25, or a month like 2026-11';

function checkDateValue(
  { choices }: Question,
  value: string,
  { birthDate, onDate }: { readonly birthDate: string; readonly onDate: string },
): string[] {
  if (choices?.some(({ id }) => id === value)) return [];
  if (!isDateOrMonth(value)) return [NO_DATE];
  // A month lies before a day when it ends before it, so both are compared to the month.
  const { length } = value;
  if (value > onDate.slice(0, length)) return [`${value} is after the visit on ${onDate}`];
  return value < birthDate.slice(0, length) ? [`${value} is before the birth on ${birthDate}`] : [];
}

function checkRange({ min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, unit }: Question, value: number): string[] {
  const withUnit = (limit: number) => (unit === undefined ? `${limit}` : `${limit} ${unit}`);
  if (value < min) return [`${value} is below ${withUnit(min)}`];
  return value > max ? [`${value} is above ${withUnit(max)}`] : [];
}

function checkChoices({ choices }: Question, ids: readonly string[]): string[] {
  if (!choices) return [];
  return ids.filter((id) => !choices.some((choice) => choice.id === id)).map((id) => `"${id}" is not one of: ${listIds(choices)}`);
}

function checkReading({ practice, person, visit }: VisitInput): VisitProblem[] {
  const checkPast = (list: 'pastReadings' | 'studySwabs') =>
    (visit[list] ?? []).flatMap(({ takenAt }, i) => {
      const path = `visit.${list}.${i}.takenAt`;
      if (daysUntil(visit.onDate, takenAt) > CALENDAR_SLACK_DAYS) return [{ path, message: `is after the visit on ${visit.onDate}` }];
      const isBeforeBirth = daysUntil(person.birthDate, takenAt) < -CALENDAR_SLACK_DAYS;
      return isBeforeBirth ? [{ path, message: `is before the birth on ${person.birthDate}` }] : [];
    });
  const past = [...checkPast('pastReadings'), ...checkPast('studySwabs')];
  const { reading, meterId } = visit;
  const meter = practice.meters.find((m) => m.id === meterId);
  const problems: VisitProblem[] = [];
  if (meterId !== undefined && !meter) {
    problems.push({ path: 'visit.meterId', message: `"${meterId}" is not one of: ${listIds(practice.meters)}` });
  }
  if (!reading) return [...problems, ...past];
  const { rlu, lotId } = reading;
  if (rlu !== undefined && meterId === undefined) {
    problems.push({ path: 'visit.meterId', message: 'is missing: a number needs the meter that gave it' });
  }
  if (rlu !== undefined && meter && !(rlu >= meter.lowestRlu && rlu <= meter.highestRlu)) {
    const range = `${meter.lowestRlu} to ${meter.highestRlu} RLU`;
    problems.push({ path: 'visit.reading.rlu', message: `${rlu} is outside what ${meter.name} can show, ${range}` });
  }
  if (lotId !== undefined && !practice.lots.some((lot) => lot.id === lotId)) {
    problems.push({ path: 'visit.reading.lotId', message: `"${lotId}" is not one of: ${listIds(practice.lots)}` });
  }
  return [...problems, ...checkReadingItself(reading, visit.onDate), ...past];
}

function checkReadingItself(reading: SwabReading, onDate: string): VisitProblem[] {
  const { rlu, bound, failed, notTaken, notTakenNote } = reading;
  const problems: VisitProblem[] = [];
  if (rlu !== undefined && notTaken !== undefined) {
    problems.push({ path: 'visit.reading.rlu', message: 'is given although the reading was not taken' });
  }
  if (rlu !== undefined && failed === true) {
    problems.push({ path: 'visit.reading.rlu', message: 'is given although the swab failed' });
  }
  if (bound !== undefined && rlu === undefined) {
    problems.push({ path: 'visit.reading.bound', message: 'is given without a number' });
  }
  if (notTakenNote !== undefined && notTaken === undefined) {
    problems.push({ path: 'visit.reading.notTakenNote', message: 'is given without the reason it stands beside' });
  }
  for (const field of ['activatedAt', 'takenAt'] as const) {
    const noted = reading[field];
    if (noted !== undefined && Math.abs(daysUntil(onDate, noted)) > CALENDAR_SLACK_DAYS) {
      problems.push({ path: `visit.reading.${field}`, message: `is not on the day of the visit, ${onDate}` });
    }
  }
  return problems;
}

function checkPlan({ practice, visit }: VisitInput): VisitProblem[] {
  const isOnShelf = (id: string) => practice.shelf.some((item) => item.id === id);
  const offShelf = [
    ...visit.signed.map((item, i) => ({ id: item.shelfItemId, path: `visit.signed.${i}.shelfItemId` })),
    ...(visit.refused ?? []).map((item, i) => ({ id: item.shelfItemId, path: `visit.refused.${i}.shelfItemId` })),
    ...Object.keys(visit.agreed?.items ?? {}).map((id) => ({ id, path: `visit.agreed.items.${id}` })),
    ...Object.entries(visit.agreed?.instead ?? {}).flatMap(([id, taken]) =>
      [id, taken].map((i) => ({ id: i, path: `visit.agreed.instead.${id}` })),
    ),
    ...(visit.agreed?.regimen?.split('+') ?? []).map((id) => ({ id, path: 'visit.agreed.regimen' })),
  ].filter(({ id }) => !isOnShelf(id));
  const problems = offShelf.map(({ id, path }) => ({ path, message: `"${id}" is not on the practice's shelf` }));
  for (const id of Object.keys(visit.used ?? {})) {
    const isKnown = visit.pastCare?.some((care) => care.shelfItemId === id);
    if (!isKnown) problems.push({ path: `visit.used.${id}`, message: 'is no home care agreed at an earlier visit' });
  }
  for (const id of Object.keys(visit.goalsSince ?? {})) {
    const isKnown = visit.pastGoals?.some((goal) => goal.id === id);
    if (!isKnown) problems.push({ path: `visit.goalsSince.${id}`, message: 'is no goal of an earlier visit' });
  }
  const { confirmed } = visit;
  if (confirmed?.changedFrom !== undefined && !confirmed.reason?.trim()) {
    problems.push({ path: 'visit.confirmed.reason', message: 'is missing: a changed level needs a reason' });
  }
  return problems;
}

function checkDays(told: DescribedDays | undefined, foods: ReadonlyMap<string, Food>): VisitProblem[] {
  if (!told) return [];
  const named = [
    ...told.days.map((day, i) => ({ at: `days.${i}`, day })),
    ...(told.changed ? [{ at: 'changed.day', day: told.changed.day }] : []),
  ];
  return named.flatMap(({ at, day }) =>
    findDayProblems(day, foods).map(({ path, message }) => ({ path: `visit.acidDay.${at}.${path}`, message })),
  );
}

const listIds = (rows: readonly { readonly id: string }[]) => rows.map((row) => row.id).join(', ') || 'none at all';

/** Whole calendar days from a date to the date part of a time, as each was written down. */
const daysUntil = (date: string, time: string): number => daysBetween(date, time.slice(0, 10));
