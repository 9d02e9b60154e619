import { parseDecimal, sayNotANumber } from '../../parseDecimal.ts';

/** A number that is typed, with what is allowed. */
export interface NumberField {
  readonly label: string;
  readonly unit?: string;
  readonly low: number;
  readonly high: number;
  /** `low` itself is not taken. */
  readonly isAbove?: true;
  readonly hint?: string;
}

export type FieldsOf<F extends string> = Readonly<Record<F, NumberField>>;
export type Typed = Readonly<Record<string, string>>;
export type Problems = Readonly<Record<string, string>>;

/** What is needed, and what may stay empty. */
export type Numbers<N extends string, O extends string> = Readonly<Record<N, number>> & Readonly<Partial<Record<O, number>>>;

export type ReadNumbers<N extends string, O extends string> =
  | { readonly isComplete: true; readonly numbers: Numbers<N, O>; readonly problems: Problems }
  | { readonly isComplete: false; readonly problems: Problems };

/** Every problem at once, each with the name of its field and what is allowed. Nothing is rounded or moved into its range. */
export function readNumbers<N extends string, O extends string>(
  typed: Typed,
  needed: FieldsOf<N>,
  optional: FieldsOf<O>,
): ReadNumbers<N, O> {
  const numbers: Record<string, number> = {};
  const problems: Record<string, string> = {};
  const readAll = (fields: Readonly<Record<string, NumberField>>, isNeeded: boolean) => {
    for (const [name, field] of Object.entries(fields)) {
      const text = typed[name] ?? '';
      if (text.trim() === '' && !isNeeded) continue;
      const value = parseDecimal(text);
      if (value !== undefined && isAllowed(value, field)) numbers[name] = value;
      else problems[name] = sayProblem(text, value, field);
    }
  };
  readAll(needed, true);
  readAll(optional, false);
  if (Object.keys(problems).length > 0) return { isComplete: false, problems };
  // Every needed field has its number by now, or it would have a problem.
  return { isComplete: true, numbers: numbers as Numbers<N, O>, problems };
}

const isAllowed = (value: number, { low, high, isAbove }: NumberField): boolean => (isAbove ? value > low : value >= low) && value <= high;

function sayProblem(text: string, value: number | undefined, { label, unit = '', low, high, isAbove }: NumberField): string {
  const range = isAbove ? `above ${low} and at most ${high}` : `${low} to ${high}`;
  const must = `${label} must be ${range} ${unit}`.trim();
  return value === undefined && text.trim() !== '' ? `${must}. ${sayNotANumber(text)}` : `${must}.`;
}
