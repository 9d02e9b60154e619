import { centredValues } from '../centredValues.ts';
import { fQuantile } from '../fDistribution.ts';
import { sampleSd } from '../sampleSd.ts';
import { studentTQuantile } from '../studentT.ts';
import { requireLaboratories } from './precisionStudy.ts';

export interface MandelStatistics {
  /** Between laboratories: the mean's distance from the mean of means, in sd of the means. null where the means are all equal. */
  readonly h: readonly number[] | null;
  /** Within: the laboratory's sd over the pooled sd, each laboratory with the same weight. null where no laboratory has any spread. */
  readonly k: readonly number[] | null;
}

/**
 * Mandel's consistency statistics of one level of a precision study.
 * @param laboratories  at least two; each with at least two results; finite
 * @source iso5725-2
 */
export function mandelStatistics(laboratories: readonly (readonly number[])[]): MandelStatistics {
  requireLaboratories(laboratories);
  const means = laboratories.map((results) => centredValues(results).mean);
  const sds = laboratories.map(sampleSd);
  const spreadOfMeans = sampleSd(means);
  const pooled = Math.sqrt(sds.reduce((sum, sd) => sum + sd ** 2, 0) / sds.length);
  return {
    h: spreadOfMeans > 0 ? centredValues(means).deviations.map((d) => d / spreadOfMeans) : null,
    k: pooled > 0 ? sds.map((sd) => sd / pooled) : null,
  };
}

/**
 * Beyond these the statistics are unlikely in a study without odd laboratories; `risk` is 0.05 for a straggler, 0.01 for an outlier.
 * @param laboratories  number of laboratories, at least three
 * @param results       results of each, at least two
 * @param risk          two-sided for h, one-sided for k
 * @source iso5725-2
 */
export function mandelLimits(laboratories: number, results: number, risk: number): { readonly h: number; readonly k: number } {
  if (!(laboratories >= 3)) throw new RangeError(`laboratories must be at least three: ${laboratories}`);
  if (!(results >= 2)) throw new RangeError(`results must be at least two: ${results}`);
  const p = laboratories;
  const t = studentTQuantile(1 - risk / 2, p - 2);
  const f = fQuantile(1 - risk, results - 1, (p - 1) * (results - 1));
  return { h: ((p - 1) * t) / Math.sqrt(p * (t ** 2 + p - 2)), k: Math.sqrt(p / (1 + (p - 1) / f)) };
}
