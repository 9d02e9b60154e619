import { describeIssues } from '../api/describeIssues.ts';
import { type VisitFile, VisitFileSchema } from '../api/visitSchema.ts';
import { demoPractice } from '../content/demo/practice.ts';
import { questions } from '../content/questions.ts';
import { checkVisit } from '../core/visit/checkVisit.ts';
import type { PracticeFile, VisitInput } from '../core/visit/types.ts';
import { AnswerError } from './failure.ts';

/** A parsed visit file as an assessment takes it. @throws AnswerError that names the first wrong field, and the others' paths */
export function readVisit(value: unknown): VisitInput {
  const parsed = VisitFileSchema.safeParse(value);
  if (!parsed.success) throw wrongFields(describeIssues(parsed.error.issues, value));
  const { practice, person, visit } = parsed.data;
  const input: VisitInput = { practice: practice === 'demo' ? demoPractice : withTraits(practice), person, visit };
  const problems = checkVisit(input, questions);
  if (problems.length > 0) throw wrongFields(problems);
  return input;
}

/** A pack whose ingredients nobody has looked at says so outright: rules about ingredients then ask first. */
function withTraits(practice: Exclude<VisitFile['practice'], 'demo'>): PracticeFile {
  return { ...practice, shelf: practice.shelf.map((item) => ({ ...item, traits: item.traits })) };
}

function wrongFields(problems: readonly { readonly path: string; readonly message: string }[]): AnswerError {
  const [first = { path: '', message: 'is not a visit' }, ...others] = problems;
  const also = others.length === 0 ? '' : ` (also wrong: ${[...new Set(others.map(({ path }) => path))].join(', ')})`;
  return new AnswerError(first.path, first.message + also);
}
