import { AppError } from '../api/errors.ts';
import { FIELD_SCHEMAS } from '../api/visitSchema.ts';
import { questions } from '../content/questions.ts';

/** The value of a draft field, parsed by its schema. @throws AppError INPUT_INVALID naming the field */
export function checkField(path: string, value: unknown): unknown {
  const [first = '', question] = path.split('.');
  if (!Object.hasOwn(FIELD_SCHEMAS, first)) throw new AppError('INPUT_INVALID', `${path}: there is no such field`);
  if (first === 'answers' && !questions.some((q) => q.id === question)) throw new AppError('INPUT_INVALID', `${path}: there is no such question`);
  const parsed = FIELD_SCHEMAS[first as keyof typeof FIELD_SCHEMAS].safeParse(value);
  if (parsed.success) return parsed.data;
  const issue = parsed.error.issues[0];
  throw new AppError('INPUT_INVALID', `${[path, ...(issue?.path ?? [])].join('.')}: ${issue?.message ?? 'not valid'}`);
}
