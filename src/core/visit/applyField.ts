import type { Answer } from './answer.ts';
import type { VisitInput } from './types.ts';

/**
 * The visit with one saved field put in: "answers.can_spit", "reading", "findings", ... The value is one the server takes, or took;
 * null takes the field out.
 */
export function applyField(input: VisitInput, path: string, value: unknown): VisitInput {
  const [first, question] = path.split('.', 2);
  if (first === 'answers' && question) {
    const { [question]: _, ...others } = input.visit.answers;
    return { ...input, visit: { ...input.visit, answers: value === null ? others : { ...others, [question]: value as Answer } } };
  }
  if (!first || !PLAIN_FIELDS.has(first)) throw new RangeError(`no field of a visit: ${path}`);
  if (value !== null) return { ...input, visit: { ...input.visit, [first]: value } };
  const { [first as 'goals']: _, ...rest } = input.visit;
  return { ...input, visit: first === 'findings' ? { ...rest, findings: [] } : rest };
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
  'speaker',
  'goals',
  'used',
  'goalsSince',
  'acidDay',
]);
