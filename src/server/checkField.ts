import { describeIssues, sayProblem } from '../api/describeIssues.ts';
import { AppError } from '../api/errors.ts';
import { FIELD_SCHEMAS } from '../api/visitSchema.ts';
import { foodsById } from '../content/foods.ts';
import { questions } from '../content/questions.ts';
import { applyField } from '../core/visit/applyField.ts';
import { checkVisit } from '../core/visit/checkVisit.ts';
import type { VisitInput } from '../core/visit/types.ts';

/**
 * The value of a draft field, parsed by its schema and checked against the rest of its visit.
 * @throws AppError INPUT_INVALID; the message begins with the field
 */
export function checkField(input: VisitInput, path: string, value: unknown): unknown {
  const [first = '', question] = path.split('.');
  if (!Object.hasOwn(FIELD_SCHEMAS, first)) throw new AppError('INPUT_INVALID', `${path}: there is no such field`);
  if (first === 'answers' && !questions.some((q) => q.id === question))
    throw new AppError('INPUT_INVALID', `${path}: there is no such question`);
  if (value === null) return null;
  const parsed = FIELD_SCHEMAS[first as keyof typeof FIELD_SCHEMAS].safeParse(value);
  if (!parsed.success) {
    const [problem] = describeIssues(parsed.error.issues, value);
    throw new AppError(
      'INPUT_INVALID',
      sayProblem({ path: [path, problem?.path].filter(Boolean).join('.'), message: problem?.message ?? 'is not valid' }),
    );
  }
  const inThisField = `visit.${path}`;
  const problem = checkVisit(applyField(input, path, parsed.data), questions, foodsById).find(
    (p) => p.path === inThisField || p.path.startsWith(`${inThisField}.`),
  );
  if (problem) throw new AppError('INPUT_INVALID', `${problem.path.slice('visit.'.length)}: ${problem.message}`);
  return parsed.data;
}
