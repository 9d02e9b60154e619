import { type Constraint, type Model, type Solution, type SolutionStatus, solve } from 'yalps';

/** Sum of coefficient times variable. Variables are whole numbers, 0 or more. */
export type Terms = readonly (readonly [variable: string, coefficient: number])[];

/** A sum and the bounds that it keeps, both included. */
export interface Row {
  readonly terms: Terms;
  readonly atLeast?: number | undefined;
  readonly atMost?: number | undefined;
}

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
 * @throws Error when the solver ends with neither an optimum nor a proof that there is none
 */
export function solveInOrder(rows: readonly Row[], goals: readonly Terms[]): Solved | undefined {
  let held = rows;
  let values: ReadonlyMap<string, number> | undefined;
  const optima: number[] = [];
  for (const goal of goals) {
    // No sum of such terms is below 0.
    if (!values || sumOf(goal, values) > 0) values = minimise(held, goal);
    if (!values) return undefined;
    const optimum = sumOf(goal, values);
    optima.push(optimum);
    held = [...held, { terms: goal, atMost: optimum + HELD_WITHIN }];
  }
  return values && { values, optima };
}

export const sumOf = (terms: Terms, values: ReadonlyMap<string, number>): number =>
  terms.reduce((sum, [variable, coefficient]) => sum + coefficient * (values.get(variable) ?? 0), 0);

const GOAL = -1;

/** Enough for programmes many times as large; more means that the simplex method goes in a circle. */
const MOST_PIVOTS = 1_000;
const MOST_ORDERS = 8;
/** Few programmes need more than some hundred branches; the last order may take as long as it wants. */
const USUAL_BRANCHES = 2_000;
const MOST_BRANCHES = 32_768;

/** A circle, of the simplex method or of its branches, depends on the order of the rows: another order of the same rows leaves it. */
function minimise(rows: readonly Row[], goal: Terms): ReadonlyMap<string, number> | undefined {
  let status: SolutionStatus = 'cycled';
  for (let order = 0; order < MOST_ORDERS; order += 1) {
    const cut = Math.floor((rows.length * order) / MOST_ORDERS);
    const branches = order < MOST_ORDERS - 1 ? USUAL_BRANCHES : MOST_BRANCHES;
    const found = solveOnce([...rows.slice(cut), ...rows.slice(0, cut)], goal, branches);
    status = found.status;
    if (status === 'infeasible') return undefined;
    if (status === 'optimal') return new Map(found.variables.map(([variable, value]) => [variable, Math.round(value)]));
    if (status !== 'cycled' && status !== 'timedout') break;
  }
  throw new Error(`a programme of ${rows.length} rows ended as ${status}`);
}

function solveOnce(rows: readonly Row[], goal: Terms, maxIterations: number): Solution {
  const variables = new Map<string, Map<number, number>>();
  const add = (key: number, terms: Terms) => {
    for (const [variable, coefficient] of terms) {
      const column = variables.get(variable) ?? new Map<number, number>();
      column.set(key, (column.get(key) ?? 0) + coefficient);
      variables.set(variable, column);
    }
  };
  for (const [i, row] of rows.entries()) add(i, row.terms);
  add(GOAL, goal);
  const constraints = rows.map(({ atLeast, atMost }, i): [number, Constraint] => [
    i,
    { ...(atLeast === undefined ? {} : { min: atLeast }), ...(atMost === undefined ? {} : { max: atMost }) },
  ]);
  const model: Model<string, number> = { direction: 'minimize', objective: GOAL, constraints, variables, integers: true };
  return solve(model, { maxPivots: MOST_PIVOTS, maxIterations });
}
