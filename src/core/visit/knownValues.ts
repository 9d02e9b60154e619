import type { AnswerValue } from './answer.ts';

type Known = Readonly<Record<string, AnswerValue>>;

/** An answer as a list of ids; undefined where it is not known. */
export function listOf(known: Known, id: string): readonly string[] | undefined {
  const value = known[id];
  return Array.isArray(value) ? value : undefined;
}

/** An answer as a number; undefined where it is not known. */
export function numberOf(known: Known, id: string): number | undefined {
  const value = known[id];
  return typeof value === 'number' ? value : undefined;
}
