import { keepByKey } from '../keep/keepByKey.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { AnswerValue } from '../visit/answer.ts';
import type { Question } from '../visit/question.ts';
import type { MouthDecision } from '../visit/types.ts';

/**
 * The questions that are put to this mouth: without those that make no sense in it, and with a measurement no longer optional where the
 * mouth is the reason to measure. The very same list where the mouth changes nothing.
 * @param known  answers that count today, for measurements of which one is enough
 */
export function questionsInMouth(
  questions: readonly Question[],
  { reasons, notAsked }: Pick<MouthDecision, 'reasons' | 'notAsked'>,
  known: Readonly<Record<string, AnswerValue>>,
): readonly Question[] {
  const wanted = mayBeWanted(questions).filter(
    ({ wantedIn }) =>
      wantedIn?.mouths.some((reason) => reasons.includes(reason)) === true && !wantedIn.unlessKnown.some((id) => known[id] !== undefined),
  );
  if (notAsked.length === 0 && wanted.length === 0) return questions;
  return changedLists(questions)(JSON.stringify([notAsked, wanted.map(({ id }) => id)]));
}

const mayBeWanted = keepByTable((questions: readonly Question[]) => questions.filter(({ wantedIn }) => wantedIn !== undefined));

/** There are a few mouths and many visits: the same list for the same mouth, so that what is worked out from it is kept. */
const changedLists = keepByTable((questions: readonly Question[]) =>
  keepByKey((key: string): readonly Question[] => {
    const [notAsked, wanted] = JSON.parse(key) as [string[], string[]];
    return questions
      .filter(({ id }) => !notAsked.includes(id))
      .map((question) => (wanted.includes(question.id) ? { ...question, optional: undefined } : question));
  }),
);
