import loadHighs from 'highs';
import { type Row, sumOf, type Terms } from '../src/core/regimen/choice/row.ts';
import type { Solved } from '../src/core/regimen/choice/solveInOrder.ts';

/** The same sequence of programmes as `solveInOrder`, by another solver; undefined when no whole numbers keep the rows. */
export type SolveInOrder = (rows: readonly Row[], goals: readonly Terms[]) => Solved | undefined;

/** By default it stops within a ten-thousandth of the optimum. */
const EXACT = { mip_rel_gap: 0, mip_abs_gap: 0 } as const;

export async function startHighs(): Promise<SolveInOrder> {
  const highs = await loadHighs();
  return (rows, goals) => {
    let held = rows;
    const optima: number[] = [];
    let values = new Map<string, number>();
    for (const goal of goals) {
      const { text, names } = lpText(held, goal);
      const solution = highs.solve(text, EXACT);
      if (solution.Status === 'Infeasible') return undefined;
      if (solution.Status !== 'Optimal') throw new Error(`HiGHS ended as ${solution.Status}`);
      values = new Map(
        Object.entries(solution.Columns).map(([key, { Primal }]) => [names.get(key) ?? key, Math.round(Primal ?? Number.NaN)]),
      );
      const optimum = sumOf(goal, values);
      optima.push(optimum);
      held = [...held, { terms: goal, atMost: optimum + 1e-6 }];
    }
    return { values, optima };
  };
}

/** CPLEX LP format; names are replaced by letters and numbers. */
function lpText(rows: readonly Row[], goal: Terms): { readonly text: string; readonly names: ReadonlyMap<string, string> } {
  const keys = new Map<string, string>();
  const keyOf = (name: string): string => {
    const key = keys.get(name) ?? `v${keys.size}`;
    keys.set(name, key);
    return key;
  };
  // A variable that is named twice would keep its last coefficient alone.
  const summed = (terms: Terms): Terms => [
    ...terms.reduce((sums, [name, c]) => sums.set(name, (sums.get(name) ?? 0) + c), new Map<string, number>()),
  ];
  const say = (terms: Terms): string =>
    summed(terms)
      .map(([name, c]) => `${c < 0 ? '-' : '+'} ${Math.abs(c)} ${keyOf(name)}`)
      .join(' ');
  const body = rows.flatMap(({ terms, atLeast, atMost }) => [
    ...(terms.length > 0 && atLeast !== undefined ? [` ${say(terms)} >= ${atLeast}`] : []),
    ...(terms.length > 0 && atMost !== undefined ? [` ${say(terms)} <= ${atMost}`] : []),
  ]);
  const objective = goal.length === 0 ? `0 ${keyOf('nothing')}` : say(goal);
  const text = ['Minimize', ` ${objective}`, 'Subject To', ...body, 'General', ` ${[...keys.values()].join(' ')}`, 'End', ''].join('\n');
  return { text, names: new Map([...keys].map(([name, key]) => [key, name])) };
}
