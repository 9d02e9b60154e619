import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import { unknownKindOf } from '../risk/knownAnswers.ts';
import type { Answers, AnswerValue } from './answer.ts';
import type { Question } from './question.ts';

export interface FollowUpPlace {
  readonly answers: Answers;
  /** ISO local date of the visit. */
  readonly onDate: string;
  /** Every question, with those that follow-ups hang on. */
  readonly questions: readonly Question[];
}

/** Whether a question is put: one that hangs on another answer only where that answer is there and counts today. */
export function isPut({ askedIf }: Question, { answers, onDate, questions }: FollowUpPlace): boolean {
  if (!askedIf) return true;
  const first = questions.find(({ id }) => id === askedIf.question);
  const answer = answers[askedIf.question];
  if (!first || answer?.value === undefined || unknownKindOf(answer, first, onDate) !== undefined) return false;
  return 'above' in askedIf
    ? typeof answer.value === 'number' && answer.value > askedIf.above
    : idsOf(answer.value).some((id) => askedIf.anyOf.includes(id));
}

/** The questions without the follow-ups that nothing calls for. The very same list for the same follow-ups. */
export function withoutIdleFollowUps(asked: readonly Question[], place: FollowUpPlace): readonly Question[] {
  const idle = followUpsOf(asked).filter((question) => !isPut(question, place));
  return idle.length === 0 ? asked : shorterLists(asked)(idle.map(({ id }) => id).join(' '));
}

const followUpsOf = keepByTable((questions: readonly Question[]) => questions.filter(({ askedIf }) => askedIf !== undefined));

const shorterLists = keepByTable((questions: readonly Question[]) =>
  keepByKey((idle: string): readonly Question[] => {
    const ids = idle.split(' ');
    return questions.filter(({ id }) => !ids.includes(id));
  }),
);

const idsOf = (value: AnswerValue): readonly string[] => (Array.isArray(value) ? value : typeof value === 'string' ? [value] : []);
