import stdlibCdf from '@stdlib/stats-base-dists-beta-cdf';
import stdlibQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { requireAboveZero, requireProbability } from './requireArgument.ts';

/**
 * Beta quantile, x with P(X <= x) = p.
 * @param p       probability, strictly between 0 and 1
 * @param shape1  above 0
 * @param shape2  above 0
 * @returns between 0 and 1
 * @throws RangeError outside these ranges, NaN included
 * @accuracy relative 1e-12 against R 4.2.2 (betaDistribution.test.ts)
 */
export function betaQuantile(p: number, shape1: number, shape2: number): number {
  return stdlibQuantile(requireProbability(p), requireAboveZero(shape1, 'shape1'), requireAboveZero(shape2, 'shape2'));
}

/** Beta distribution function. @throws RangeError for a shape that is not above 0 */
export function betaCdf(x: number, shape1: number, shape2: number): number {
  return stdlibCdf(x, requireAboveZero(shape1, 'shape1'), requireAboveZero(shape2, 'shape2'));
}
