// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { type Constraint, solve } from 'yalps';
import { type Box, KEPT_WITHIN, sumAt, type UpperRow } from './tighten.ts';

const GOAL = -1;

interface RelaxInput {
  readonly rows: readonly UpperRow[];
  /** Coefficients are 0 or more. */
  readonly goal: UpperRow;
  readonly box: Box;
  /** After as many the simplex method is taken to go in a circle. */
  readonly mostPivots: number;
}

export interface Relaxed {
  readonly optimum: number;
  readonly values: readonly number[];
}

/**
 * The smallest goal where fractions are allowed, and upper ends of the box may be passed: never above that of whole numbers in the box.
 * @returns 'circling' when the simplex method gives no answer
 */
export function relax({ rows, goal, box, mostPivots }: RelaxInput): Relaxed | 'infeasible' | 'circling' {
  const { least, most } = box;
  const isFree = (i: number): boolean => least[i]! < most[i]!;
  // Counted from the lower end of the box: what stands there needs no variable.
  const left = rows
    .map((row) => ({ row, atMost: row.atMost - sumAt(row, least) }))
    .filter(({ row, atMost }) => largestRise(row, box) > atMost);
  const base = sumAt(goal, least);
  if (left.every(({ atMost }) => atMost >= -KEPT_WITHIN)) return { optimum: base, values: least };
  const variables = new Map<number, [number, number][]>();
  const add = (key: number, { places, coefficients }: UpperRow) => {
    for (const [k, i] of places.entries()) {
      if (!isFree(i)) continue;
      const column = variables.get(i) ?? [];
      column.push([key, coefficients[k]!]);
      variables.set(i, column);
    }
  };
  for (const [r, { row }] of left.entries()) add(r, row);
  add(GOAL, goal);
  const constraints = left.map(({ atMost }, r): [number, Constraint] => [r, { max: atMost }]);
  const found = solve({ direction: 'minimize', objective: GOAL, constraints, variables }, { maxPivots: mostPivots });
  if (found.status === 'infeasible') return 'infeasible';
  if (found.status !== 'optimal') return 'circling';
  const values = [...least];
  for (const [i, value] of found.variables) values[i] = least[i]! + value;
  return { optimum: base + found.result, values };
}

function largestRise({ places, coefficients }: UpperRow, { least, most }: Box): number {
  let rise = 0;
  for (let k = 0; k < places.length; k += 1) {
    const i = places[k]!;
    if (coefficients[k]! > 0) rise += coefficients[k]! * (most[i]! - least[i]!);
  }
  return rise;
}
