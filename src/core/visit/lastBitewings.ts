import type { LastBitewings } from '../regimen/planBitewings.ts';
import { unknownKindOf } from '../risk/knownAnswers.ts';
import type { Answers } from './answer.ts';
import type { Question } from './question.ts';

/** The question is optional, so that why it is not known is read from the answer itself. */
export function lastBitewings(answers: Answers, questions: readonly Question[], onDate: string): LastBitewings {
  const question = questions.find(({ id }) => id === 'bitewings_last');
  const answer = answers['bitewings_last'];
  const unknown = question === undefined ? 'not-asked' : unknownKindOf(answer, question, onDate);
  if (unknown !== undefined) return { unknown };
  return typeof answer?.value === 'string' ? { on: answer.value } : { unknown: 'not-asked' };
}
