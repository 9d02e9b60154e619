import type { z } from 'zod';

/** What is wrong with one field of what came in: where, and the end of a sentence that the path begins. */
export interface FieldProblem {
  readonly path: string;
  readonly message: string;
}

type Issue = z.core.$ZodIssue;

/** The schema's issues in plain words, one for each field, in the order of the schema. `input` is what was parsed. */
export function describeIssues(issues: readonly Issue[], input: unknown): readonly FieldProblem[] {
  return issues.flatMap((issue) => describeIssue(issue, input));
}

/** "visit.reading.rlu: must be a number". */
export function sayProblem({ path, message }: FieldProblem): string {
  return path === '' ? message : `${path}: ${message}`;
}

function describeIssue(issue: Issue, input: unknown): readonly FieldProblem[] {
  const path = issue.path.map(String).join('.');
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({ path: [...issue.path.map(String), key].join('.'), message: 'is not a known field' }));
  }
  if (path !== '' && valueAt(input, issue.path) === undefined && issue.code !== 'custom') return [{ path, message: 'is missing' }];
  if (issue.code === 'invalid_union') return describeUnion(issue, path, input);
  // A message of the schema's own is better than anything made here; the library's begin with these words.
  const isLibraryMessage = /^(Invalid|Too (small|big)|Unrecognized)\b/.test(issue.message);
  return [{ path, message: isLibraryMessage ? plainMessage(issue) : issue.message }];
}

/** A branch that got past its own type is what the writer meant; where none did, all the types are said. */
function describeUnion(issue: Extract<Issue, { code: 'invalid_union' }>, path: string, input: unknown): readonly FieldProblem[] {
  const meant = issue.errors.find((branch) => branch.length > 0 && branch.every((one) => one.path.length > 0));
  if (meant) return meant.flatMap((one) => describeIssue({ ...one, path: [...issue.path, ...one.path] } as Issue, input));
  const choices = issue.errors.flatMap((branch) => branch.slice(0, 1).map((one) => plainMessage(one).replace(/^must be /, '')));
  return [{ path, message: choices.length > 0 ? `must be ${choices.join(', or ')}` : 'has a wrong value' }];
}

const TYPE_NAMES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  tuple: 'a list',
  null: 'null',
};

function plainMessage(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${TYPE_NAMES[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return issue.values.length === 1
        ? `must be ${JSON.stringify(issue.values[0])}`
        : `must be one of: ${issue.values.map(String).join(', ')}`;
    case 'too_small':
      return sayLimit(issue.origin, issue.minimum, issue.inclusive ?? true, 'at least', 'above');
    case 'too_big':
      return sayLimit(issue.origin, issue.maximum, issue.inclusive ?? true, 'at most', 'below');
    case 'invalid_key':
      return 'has a name that is not allowed';
    default:
      return 'has the wrong form';
  }
}

function sayLimit(origin: string, limit: number | bigint, inclusive: boolean, atLimit: string, beyond: string): string {
  if (origin === 'string') return limit === 1 ? 'must not be empty' : `must have ${atLimit} ${limit} characters`;
  if (origin === 'array' || origin === 'set') return `must have ${atLimit} ${limit} ${limit === 1 ? 'entry' : 'entries'}`;
  return `must be ${inclusive ? atLimit : beyond} ${limit}`;
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined), input);
}
