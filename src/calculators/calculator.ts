import { z } from 'zod';
import { describeIssues } from '../api/describeIssues.ts';

/**
 * One public computation: JSON in, JSON out, the same over the command line, HTTP and code. Schemas are strict: an unknown field is
 * refused by name. `null` in an output means not defined.
 */
export interface Calculator<Input = unknown, Output = unknown> {
  readonly name: string;
  /** One line for the list. */
  readonly summary: string;
  readonly input: z.ZodType<Input>;
  readonly output: z.ZodType<Output>;
  /** May throw RangeError (input) or NotDefinedError; a method, so that calculators of all types fit one list. */
  run(input: Input): Output;
}

/** Public codes, never renamed. */
export type CalculatorErrorCode = 'INPUT_INVALID' | 'NOT_DEFINED';

export interface CalculatorError {
  readonly code: CalculatorErrorCode;
  readonly message: string;
  /** Dotted path of the field, e.g. "readings.3.rlu"; empty for the whole input. */
  readonly path: string;
}

export type CalculatorResult = { readonly ok: true; readonly output: unknown } | { readonly ok: false; readonly error: CalculatorError };

/** The input is well formed but has no answer, e.g. a solver without a solution. */
export class NotDefinedError extends Error {
  override readonly name = 'NotDefinedError';

  constructor(
    message: string,
    /** Dotted path of the field that falls short; empty where it is no single one. */
    readonly path = '',
  ) {
    super(message);
  }
}

/** Parses, runs and checks the output. Never throws for what a user can send; a fault of ours still throws. */
export function runCalculator(calculator: Calculator, input: unknown): CalculatorResult {
  const parsed = calculator.input.safeParse(input);
  if (!parsed.success) {
    const { message, path } = describeIssues(parsed.error.issues, input)[0] ?? { message: 'is not a valid input', path: '' };
    return failed('INPUT_INVALID', message, path);
  }
  let output: unknown;
  try {
    output = calculator.run(parsed.data);
  } catch (error) {
    if (error instanceof RangeError) return failed('INPUT_INVALID', error.message, fieldNamedIn(error.message, parsed.data));
    if (error instanceof NotDefinedError) return failed('NOT_DEFINED', error.message, error.path);
    throw error;
  }
  const path = findNotFinite(output, '');
  return path === undefined ? { ok: true, output } : failed('NOT_DEFINED', 'the result is not a finite number', path);
}

/** JSON Schema of what goes in. */
export const inputJsonSchema = (calculator: Calculator) => z.toJSONSchema(calculator.input, { io: 'input' });

/** JSON Schema of what comes out. */
export const outputJsonSchema = (calculator: Calculator) => z.toJSONSchema(calculator.output, { io: 'output' });

const failed = (code: CalculatorErrorCode, message: string, path: string): CalculatorResult => ({
  ok: false,
  error: { code, message, path },
});

/** The computing core begins a RangeError with the field's name; kept as the path if the input has such a field. */
function fieldNamedIn(message: string, input: unknown): string {
  const name = message.split(/[\s:]/, 1)[0] ?? '';
  const [first = ''] = name.split('.');
  return typeof input === 'object' && input !== null && Object.hasOwn(input, first) ? name : '';
}

/** Dotted path of the first NaN or Infinity inside `value`. */
function findNotFinite(value: unknown, path: string): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : path;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, part] of Object.entries(value)) {
    const found = findNotFinite(part, path === '' ? key : `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
