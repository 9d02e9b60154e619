import type { Plan, Regimen } from '../../../core/regimen/types.ts';

/** The regimen that is the plan, the best of the others beside it, and the rest one key away. */
export interface Ways {
  readonly chosen: Regimen;
  readonly other: Regimen;
  readonly rest: readonly Regimen[];
}

/** Undefined where there is nothing to choose between: no other regimen, or a plan of an earlier edition. */
export function waysOf({ regimens = [], chosenRegimen }: Pick<Plan, 'regimens' | 'chosenRegimen'>): Ways | undefined {
  const chosen = regimens.find(({ id }) => id === chosenRegimen);
  const [other, ...rest] = regimens.filter((regimen) => regimen !== chosen);
  return chosen && other ? { chosen, other, rest } : undefined;
}
