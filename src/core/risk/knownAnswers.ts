import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { Answer, Answers, AnswerValue, UnknownKind } from '../visit/answer.ts';
import { isMoreThanMonthsLater } from '../visit/calendar.ts';
import type { Question } from '../visit/question.ts';
import { isInAgeRange } from './conditions.ts';

export interface UnknownAnswer {
  readonly question: string;
  readonly kind: UnknownKind;
}

export interface KnownAnswers {
  /** Values that count today, by question id; only questions of this age. */
  readonly known: Readonly<Record<string, AnswerValue>>;
  /** Questions of this age that are not known today, in their order; without optional ones. */
  readonly unknown: readonly UnknownAnswer[];
}

/**
 * Which answers count as known on a day. Asked today counts; carried counts until the keep-for time of the question has passed
 * (on its last day it still counts); everything else is one of four kinds of unknown.
 * @param ageYears  completed years; questions for other ages are left out altogether
 * @param onDate    ISO local date of the visit
 */
export function knownAnswers(input: {
  readonly answers: Answers;
  readonly questions: readonly Question[];
  readonly ageYears: number;
  readonly onDate: string;
}): KnownAnswers {
  const known: Record<string, AnswerValue> = {};
  const unknown: UnknownAnswer[] = [];
  for (const question of questionsAtAge(input.questions, input.ageYears)) {
    const answer = input.answers[question.id];
    const kind = unknownKindOf(answer, question, input.onDate);
    if (kind === undefined && answer?.value !== undefined) known[question.id] = answer.value;
    else if (question.optional !== true) unknown.push({ question: question.id, kind: kind ?? 'not-asked' });
  }
  return { known, unknown };
}

/** Questions of this age, in their order. */
export function questionsAtAge(questions: readonly Question[], ageYears: number): readonly Question[] {
  return byAge(questions)(ageYears);
}

const byAge = keepByTable((questions: readonly Question[]) =>
  keepByKey((ageYears: number): readonly Question[] => questions.filter((question) => isInAgeRange(question, ageYears))),
);

/** Why the answer is not known on this day; undefined when it is. */
export function unknownKindOf(
  answer: Answer | undefined,
  question: Pick<Question, 'keepForMonths'>,
  onDate: string,
): UnknownKind | undefined {
  if (answer === undefined || answer.how === 'not-asked') return 'not-asked';
  if (answer.how === 'declined' || answer.how === 'does-not-know') return answer.how;
  if (answer.value === undefined) return 'not-asked';
  return answer.how === 'carried' && isOutOfDate(answer.askedOn, question.keepForMonths, onDate) ? 'out-of-date' : undefined;
}

/**
 * @param askedOn        ISO local date; absent = nobody knows when, so out of date unless the answer never goes out of date
 * @param keepForMonths  whole months; absent = never out of date
 */
function isOutOfDate(askedOn: string | undefined, keepForMonths: number | undefined, onDate: string): boolean {
  if (keepForMonths === undefined) return false;
  if (askedOn === undefined || askedOn > onDate) return true;
  return isMoreThanMonthsLater(askedOn, keepForMonths, onDate);
}
