import { fQuantile } from '../fDistribution.ts';
import { requireProbability } from '../requireArgument.ts';
import { sampleSd } from '../sampleSd.ts';
import { requireLaboratories } from './precisionStudy.ts';

export interface CochranTest {
  /** The largest variance over the sum of all; 1 / laboratories to 1. null where no laboratory has any spread. */
  readonly c: number | null;
  /** Whose variance it is, counted from 0. */
  readonly laboratory: number;
}

/**
 * Cochran's test statistic: does one laboratory scatter more than the others?
 * @param laboratories  at least two; each with at least two results, the same number but for a few missing; finite
 * @source iso5725-2
 */
export function cochranTest(laboratories: readonly (readonly number[])[]): CochranTest {
  requireLaboratories(laboratories);
  const variances = laboratories.map((results) => sampleSd(results) ** 2);
  const largest = Math.max(...variances);
  const sum = variances.reduce((total, variance) => total + variance, 0);
  return { c: sum > 0 ? largest / sum : null, laboratory: variances.indexOf(largest) };
}

/**
 * Critical value of Cochran's statistic, from the F distribution with the risk shared among the laboratories.
 * @param laboratories  number of laboratories, at least two
 * @param results       results of each, at least two
 * @param risk          0.05 for a straggler, 0.01 for an outlier
 * @source iso5725-2
 */
export function cochranLimit(laboratories: number, results: number, risk: number): number {
  if (!(laboratories >= 2)) throw new RangeError(`laboratories must be at least two: ${laboratories}`);
  if (!(results >= 2)) throw new RangeError(`results must be at least two: ${results}`);
  const f = fQuantile(1 - requireProbability(risk) / laboratories, results - 1, (laboratories - 1) * (results - 1));
  return 1 / (1 + (laboratories - 1) / f);
}
