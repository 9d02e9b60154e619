import { z } from 'zod';
import { describeIssues } from '../api/describeIssues.ts';
import { PracticeFileSchema, type VisitFile, VisitFileSchema } from '../api/visitSchema.ts';
import { demoPractice } from '../content/demo/practice.ts';
import { foodsById } from '../content/foods.ts';
import { questions } from '../content/questions.ts';
import { keepByKey } from '../core/keep/keepByKey.ts';
import { once } from '../core/keep/once.ts';
import { checkVisit } from '../core/visit/checkVisit.ts';
import type { PracticeFile, VisitInput } from '../core/visit/types.ts';
import { AnswerError } from './failure.ts';

/** A parsed visit file as an assessment takes it. @throws AnswerError that names the first wrong field, and the others' paths */
export function readVisit(value: unknown): VisitInput {
  const known = findKnownPractice(value);
  const parsed = compiledSchema().safeParse(known ? { ...known.file, practice: 'demo' } : value);
  if (!parsed.success) throw wrongFields(describeIssues(parsed.error.issues, value));
  const { practice, person, visit } = parsed.data;
  const input: VisitInput = { practice: known?.practice ?? (practice === 'demo' ? demoPractice : withTraits(practice)), person, visit };
  const problems = checkVisit(input, questions, foodsById);
  if (problems.length > 0) throw wrongFields(problems);
  return input;
}

/** The same schema as generated code, four times as quick on a good file; a wrong one is parsed again as usual, for its messages. */
const compiledSchema = once(() => z.compile(VisitFileSchema));

/** The practice of a visit file, where it is written out and as it should be. */
function findKnownPractice(value: unknown): { readonly file: object; readonly practice: PracticeFile } | undefined {
  if (typeof value !== 'object' || value === null || !('practice' in value) || typeof value.practice !== 'object') return undefined;
  const practice = practiceFromText(JSON.stringify(value.practice));
  return practice === null ? undefined : { file: value, practice };
}

/** A stream repeats its practice on every line: it is checked once. */
const practiceFromText = keepByKey((text: string): PracticeFile | null => {
  const parsed = PracticeFileSchema.safeParse(JSON.parse(text));
  return parsed.success ? withTraits(parsed.data) : null;
});

/** A pack whose ingredients nobody has looked at says so outright: rules about ingredients then ask first. */
function withTraits(practice: Exclude<VisitFile['practice'], 'demo'>): PracticeFile {
  return { ...practice, shelf: practice.shelf.map((item) => ({ ...item, traits: item.traits })) };
}

function wrongFields(problems: readonly { readonly path: string; readonly message: string }[]): AnswerError {
  const [first = { path: '', message: 'is not a visit' }, ...others] = problems;
  const also = others.length === 0 ? '' : ` (also wrong: ${[...new Set(others.map(({ path }) => path))].join(', ')})`;
  return new AnswerError(first.path, first.message + also);
}
