import type { Row } from './row.ts';
import { solveInOrder } from './solveInOrder.ts';

/** Rows that hold unless the groups that they may be freed by are freed: a group's variable is 1 once it is freed. */
export interface GroupedRows {
  readonly rows: readonly Row[];
  /** Names of the groups' variables; where several smallest sets exist, earlier names are taken first. */
  readonly groups: readonly string[];
}

/**
 * The smallest set of groups that cannot hold together, by implicit hitting sets: the smallest set that has a group of every correction
 * found so far is the answer as soon as no further correction exists outside it.
 * @returns undefined when all groups can hold together
 * @throws Error when the rows cannot hold even with every group freed
 * @source ignatiev2015
 */
export function smallestConflict({ rows, groups }: GroupedRows): readonly string[] | undefined {
  const bounds = groups.map((group): Row => ({ terms: [[group, 1]], atMost: 1 }));
  const freed = groups.map((group) => [group, 1] as const);
  const corrections: (readonly string[])[] = [];
  let held: readonly string[] = [];
  for (;;) {
    const solved = solveInOrder([...rows, ...bounds, ...held.map((group): Row => ({ terms: [[group, 1]], atMost: 0 }))], [freed]);
    if (!solved) {
      if (held.length === 0) throw new Error('the rows do not hold with every group freed');
      return held;
    }
    const correction = groups.filter((group) => (solved.values.get(group) ?? 0) > 0);
    if (correction.length === 0) return undefined;
    corrections.push(correction);
    held = smallestHittingSet(corrections, groups);
  }
}

function smallestHittingSet(sets: readonly (readonly string[])[], groups: readonly string[]): readonly string[] {
  const rows = sets.map((set): Row => ({ terms: set.map((group) => [group, 1] as const), atLeast: 1 }));
  const used = groups.filter((group) => sets.some((set) => set.includes(group)));
  const solved = solveInOrder(rows, [
    used.map((group) => [group, 1] as const),
    used.map((group) => [group, groups.indexOf(group) + 1] as const),
  ]);
  return used.filter((group) => (solved?.values.get(group) ?? 0) > 0);
}
