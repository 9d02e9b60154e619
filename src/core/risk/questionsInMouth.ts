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
  const isWanted = ({ wantedIn }: Question) =>
    wantedIn?.mouths.some((reason) => reasons.includes(reason)) === true && !wantedIn.unlessKnown.some((id) => known[id] !== undefined);
  if (notAsked.length === 0 && !questions.some(isWanted)) return questions;
  return questions
    .filter(({ id }) => !notAsked.includes(id))
    .map((question) => (isWanted(question) ? { ...question, optional: undefined } : question));
}
