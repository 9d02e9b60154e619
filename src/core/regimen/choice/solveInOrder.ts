import { minimise, type Values } from './minimise.ts';
import type { Row, Terms } from './row.ts';
import { sumAt, tighten, type UpperRow } from './tighten.ts';

/** Variables that are not 0, and the optimum of each goal. */
export interface Solved {
  readonly values: ReadonlyMap<string, number>;
  readonly optima: readonly number[];
}

/** Goals are whole numbers: a former optimum is held this closely, far below 1 and far above the solver's own rounding. */
const HELD_WITHIN = 1e-6;

/**
 * Minimises goals one after the other, each among the solutions that are best by all goals before it.
 * @param rows   every variable of a goal stands in some row that keeps it finite
 * @param goals  coefficients are whole numbers, 0 or more; most important first
 * @returns undefined when no whole numbers keep the rows
 * @throws Error when a programme has too many branches
 */
export function solveInOrder(rows: readonly Row[], goals: readonly Terms[]): Solved | undefined {
  const places = new Map<string, number>();
  for (const terms of [...rows.map((row) => row.terms), ...goals]) {
    for (const [name] of terms) if (!places.has(name)) places.set(name, places.size);
  }
  const held = rows.flatMap((row) => upperRowsOf(row, places));
  const box = { least: Array.from(places, () => 0), most: Array.from(places, () => Number.POSITIVE_INFINITY) };
  if (!tighten(held, box)) return undefined;
  let known: Values | undefined;
  const optima: number[] = [];
  for (const terms of goals) {
    const goal = upperRow(terms, places, Number.POSITIVE_INFINITY);
    known = minimise({ rows: held, goal, box, known });
    if (!known) return undefined;
    const optimum = sumAt(goal, known);
    optima.push(optimum);
    held.push({ ...goal, atMost: optimum + HELD_WITHIN });
  }
  return known && { values: new Map([...places].flatMap(([name, i]) => (known?.[i] ? [[name, known[i]]] : []))), optima };
}

function upperRowsOf({ terms, atLeast, atMost }: Row, places: ReadonlyMap<string, number>): readonly UpperRow[] {
  const negated = terms.map(([name, coefficient]) => [name, -coefficient] as const);
  return [
    ...(atMost === undefined ? [] : [upperRow(terms, places, atMost)]),
    ...(atLeast === undefined ? [] : [upperRow(negated, places, -atLeast)]),
  ];
}

/** A variable named twice counts with the sum of its coefficients. */
function upperRow(terms: Terms, places: ReadonlyMap<string, number>, atMost: number): UpperRow {
  const sums = new Map<number, number>();
  for (const [name, coefficient] of terms) {
    const place = places.get(name) ?? 0;
    sums.set(place, (sums.get(place) ?? 0) + coefficient);
  }
  const kept = [...sums].filter(([, coefficient]) => coefficient !== 0);
  return { places: kept.map(([place]) => place), coefficients: kept.map(([, coefficient]) => coefficient), atMost };
}
