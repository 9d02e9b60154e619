import stdlibCdf from '@stdlib/stats-base-dists-t-cdf';
import stdlibQuantile from '@stdlib/stats-base-dists-t-quantile';
import { requireAboveZero, requireProbability } from './requireArgument.ts';

/**
 * Student's t quantile, t with cdf(t) = p.
 * @param p   probability, strictly between 0 and 1
 * @param df  degrees of freedom, above 0, need not be whole
 * @returns t, antisymmetric about p = 0.5
 * @throws RangeError outside these ranges, NaN included
 * @accuracy relative 1e-13 against R 4.2.2 (studentT.test.ts)
 */
export function studentTQuantile(p: number, df: number): number {
  return stdlibQuantile(requireProbability(p), requireAboveZero(df, 'df'));
}

/**
 * Two-sided p of a t statistic: P(|T| >= |t|). Keeps its digits far into the tail, where 1 - cdf would not.
 * @param t   any finite number
 * @param df  degrees of freedom, above 0
 * @throws RangeError for a df that is not above 0
 */
export function studentTTwoSidedP(t: number, df: number): number {
  return 2 * stdlibCdf(-Math.abs(t), requireAboveZero(df, 'df'));
}
