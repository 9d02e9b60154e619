import type { Interval } from '../interval.ts';
import { componentInterval, mapNames, rawComponent, sharesOf, truncateNegatives, type Variances } from './componentEstimate.ts';
import type { MeanSquareTerm } from './mlsInterval.ts';
import { type NestedAnova, nestedAnova } from './nestedAnova.ts';
import { type NestedObservation, nestedCells } from './nestedCells.ts';
import { varianceInterval } from './varianceInterval.ts';

type Part = 'group' | 'member' | 'residual';

export interface NestedComponents {
  readonly anova: NestedAnova;
  /** As estimated: may be negative. */
  readonly rawComponents: Variances<Part>;
  /** Negative ones set to 0. */
  readonly components: Variances<Part>;
  /** Exact for the residual, modified large-sample for the others. `withinGroup` = member and residual together. */
  readonly intervals: Readonly<Record<Part | 'withinGroup' | 'total', Interval>>;
  /** Of the total variance; they sum to 1. */
  readonly shares: Variances<Part>;
}

/**
 * Variance components of a balanced nested study: repeats within members within groups (readings, swabs, lots), all taken at random.
 * @param observations  finite values; at least two groups, two members in each, two repeats of each member
 * @param level         of the intervals, default 0.95
 * @throws RangeError saying what is missing and what would make the study work
 * @accuracy relative 1e-8 against R 4.2.2 (nestedComponents.test.ts)
 * @source burdick2005
 */
export function nestedComponents(observations: readonly NestedObservation[], level = 0.95): NestedComponents {
  const study = nestedCells(observations);
  const anova = nestedAnova(study);
  const { members: b, repeats: n } = study;
  const terms = (group: number, member: number, residual: number): readonly MeanSquareTerm[] => [
    { coefficient: group, row: anova.group },
    { coefficient: member, row: anova.member },
    { coefficient: residual, row: anova.residual },
  ];
  const [perGroup, perMember] = [1 / (b * n), 1 / n];
  const single = { group: terms(perGroup, -perGroup, 0), member: terms(0, perMember, -perMember) };
  const sums = { withinGroup: terms(0, perMember, 1 - perMember), total: terms(perGroup, perMember - perGroup, 1 - perMember) };
  const rawComponents = { ...mapNames(single, rawComponent), residual: anova.residual.meanSquare };
  const components = truncateNegatives(rawComponents);
  return {
    anova,
    rawComponents,
    components,
    intervals: {
      ...mapNames({ ...single, ...sums }, (list) => componentInterval(list, level)),
      residual: varianceInterval(anova.residual, level),
    },
    shares: sharesOf(components),
  };
}
