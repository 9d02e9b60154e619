import type { Answer } from './answer.ts';
import type { VisitInput } from './types.ts';

/** The visit with one saved field put in: "answers.can_spit", "reading", "findings", ... The value is one the server takes, or took. */
export function applyField(input: VisitInput, path: string, value: unknown): VisitInput {
  const [first, question] = path.split('.', 2);
  if (first === 'answers' && question) {
    return { ...input, visit: { ...input.visit, answers: { ...input.visit.answers, [question]: value as Answer } } };
  }
  if (!first || !PLAIN_FIELDS.has(first)) throw new RangeError(`no field of a visit: ${path}`);
  return { ...input, visit: { ...input.visit, [first]: value } };
}

const PLAIN_FIELDS: ReadonlySet<string> = new Set([
  'reading',
  'findings',
  'allExamined',
  'agreed',
  'stopUsing',
  'nextOn',
  'language',
  'meterId',
]);
