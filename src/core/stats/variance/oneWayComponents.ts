import type { Interval } from '../interval.ts';
import { componentInterval, mapNames, rawComponent, sharesOf, truncateNegatives, type Variances } from './componentEstimate.ts';
import { requireSpreadWithin } from './crossedCells.ts';
import type { MeanSquareTerm } from './mlsInterval.ts';
import { type OneWayAnova, oneWayAnova } from './oneWayAnova.ts';
import { varianceInterval } from './varianceInterval.ts';

type Part = 'group' | 'residual';

export interface OneWayComponents {
  readonly anova: OneWayAnova;
  /** As estimated: the group's may be negative. */
  readonly rawComponents: Variances<Part>;
  /** Negative ones set to 0. */
  readonly components: Variances<Part>;
  /** Exact for the residual, modified large-sample for the others. */
  readonly intervals: Readonly<Record<Part | 'total', Interval>>;
  readonly shares: Variances<Part>;
}

/**
 * Variance components of a balanced one-way study: repeats within groups taken at random (paired days within people, swabs within lots).
 * @param groups  at least two, each with the same number of values, at least two; finite
 * @param level   of the intervals, default 0.95
 * @throws RangeError saying what is missing
 * @source burdick2005
 */
export function oneWayComponents(groups: readonly (readonly number[])[], level = 0.95): OneWayComponents {
  const n = groups[0]?.length ?? 0;
  const odd = groups.findIndex((group) => group.length !== n);
  if (groups.length < 2) throw new RangeError(`groups must be at least two: ${groups.length}`);
  if (odd >= 0) throw new RangeError(`groups.${odd} must hold as many values as the first group: ${groups[odd]?.length}, not ${n}`);
  if (n < 2) throw new RangeError('groups must hold at least two values each');
  requireSpreadWithin(groups);
  return componentsOfOneWay(oneWayAnova(groups), n, level);
}

/** The same from the table of a study that may not have been taken yet; `n` values in each group. */
export function componentsOfOneWay(anova: OneWayAnova, n: number, level = 0.95): OneWayComponents {
  const terms = (between: number, within: number): readonly MeanSquareTerm[] => [
    { coefficient: between, row: anova.between },
    { coefficient: within, row: anova.within },
  ];
  const group = terms(1 / n, -1 / n);
  const rawComponents = { group: rawComponent(group), residual: anova.within.meanSquare };
  const components = truncateNegatives(rawComponents);
  return {
    anova,
    rawComponents,
    components,
    intervals: {
      ...mapNames({ group, total: terms(1 / n, 1 - 1 / n) }, (list) => componentInterval(list, level)),
      residual: varianceInterval(anova.within, level),
    },
    shares: sharesOf(components),
  };
}
