import betaCdf from '@stdlib/stats-base-dists-beta-cdf';
import stdlibQuantile from '@stdlib/stats-base-dists-f-quantile';
import { requireAboveZero, requireProbability } from './requireArgument.ts';

/**
 * F quantile, f with P(F <= f) = p.
 * @param p    probability, strictly between 0 and 1
 * @param df1  degrees of freedom of the numerator, above 0
 * @param df2  degrees of freedom of the denominator, above 0
 * @throws RangeError outside these ranges, NaN included
 * @accuracy relative 1e-12 against R 4.2.2 (fDistribution.test.ts)
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  return stdlibQuantile(requireProbability(p), requireAboveZero(df1, 'df1'), requireAboveZero(df2, 'df2'));
}

/**
 * p of an F ratio: P(F >= f). By the beta distribution of the complement, since 1 - cdf has no digits left where p is small.
 * @param f  ratio of two mean squares, 0 or more
 * @throws RangeError for a negative or not numeric f, or a df that is not above 0
 */
export function fUpperP(f: number, df1: number, df2: number): number {
  if (!(f >= 0)) throw new RangeError(`f must be 0 or more: ${f}`);
  requireAboveZero(df1, 'df1');
  requireAboveZero(df2, 'df2');
  return betaCdf(df2 / (df2 + df1 * f), df2 / 2, df1 / 2);
}
