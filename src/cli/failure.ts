import { type ErrorCode, errorCodeOf } from '../api/errors.ts';
import type { CalculatorErrorCode } from '../calculators/calculator.ts';

/** What goes out instead of a result; the same shape for one object, for a line of a stream, and over HTTP. */
export interface ErrorBody {
  readonly error: { readonly code: ErrorCode | CalculatorErrorCode; readonly message: string; readonly path: string };
}

/** There is no answer: says which field is in the way, and what is wrong with it. */
export class AnswerError extends Error {
  constructor(
    readonly path: string,
    message: string,
    readonly code: ErrorBody['error']['code'] = 'INPUT_INVALID',
    options?: ErrorOptions,
  ) {
    super(message, options);
    this.name = 'AnswerError';
  }
}

/** The body for an error that a user can meet; undefined for a fault of ours, which must not be hidden behind a sentence. */
export function errorBodyOf(error: unknown): ErrorBody | undefined {
  if (error instanceof AnswerError) return { error: { code: error.code, message: error.message, path: error.path } };
  const code = errorCodeOf(error);
  return code === undefined || !(error instanceof Error) ? undefined : { error: { code, message: error.message, path: '' } };
}

/** "visit.reading.rlu: must be a number", or about the whole: "The input is not valid JSON (it breaks off)". */
export function sayError({ error: { path, message } }: ErrorBody, subject = 'The input'): string {
  if (path === '') return /^\p{Ll}/u.test(message) ? `${subject} ${message}` : message;
  return message.startsWith(path) ? message : `${path}: ${message}`;
}
