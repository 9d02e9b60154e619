import { type Interval, requireLevel } from '../interval.ts';
import { normalQuantile } from '../normal.ts';
import { pairMoments } from '../pairMoments.ts';
import type { Result } from '../result.ts';

export interface LinConcordance {
  /** -1..1; 1 = every pair on the line of equality. */
  readonly concordance: number;
  /** The part lost to a difference of level or of scale alone: concordance = correlation times this. */
  readonly biasCorrection: number;
  /** null under three pairs, and where every pair lies on a line of slope 1 or -1 without offset. */
  readonly se: number | null;
  /** By Fisher's z; null where the standard error is null or 0: perfect agreement says nothing of its own width. */
  readonly interval: Interval | null;
}

/**
 * Concordance correlation of paired values: how close the pairs lie to the line of equality. Moments with divisor n, as first published;
 * standard error with n - 2 and the correction of 2000.
 * Like any correlation it grows with the spread of the things measured: it compares studies only over the same range.
 * @param a      n values, finite
 * @param b      n values, b[i] on the same thing as a[i]
 * @param level  default 0.95
 * @returns `too-few` under two pairs, `no-spread` where neither list varies and both are equal (0 / 0)
 * @throws RangeError for lists of different length, values that are not finite, a level outside (0, 1)
 * @accuracy relative 1e-10 against R 4.2.2 and epiR 2.0.57 (test beside this file)
 * @source lin1989; lin2000
 */
export function linConcordance(a: readonly number[], b: readonly number[], level = 0.95): Result<LinConcordance, 'too-few' | 'no-spread'> {
  requireLevel(level);
  const { n, meanA, meanB, saa, sbb, sab } = pairMoments(a, b);
  if (n < 2) return { ok: false, reason: 'too-few' };
  const scale = saa + sbb + n * (meanA - meanB) ** 2;
  if (!(scale > 0)) return { ok: false, reason: 'no-spread' };
  const concordance = (2 * sab) / scale;
  const spread = Math.sqrt(saa * sbb);
  const biasCorrection = (2 * spread) / scale;
  if (n < 3 || !(spread > 0)) return { ok: true, value: { concordance, biasCorrection, se: null, interval: null } };
  const shift = (n * (meanA - meanB) ** 2) / spread;
  const correlation = sab / spread;
  // The published form divides by the correlation; here each quotient concordance / correlation is written as the bias correction.
  const variance =
    ((1 - correlation ** 2) * biasCorrection ** 2 * (1 - concordance ** 2) +
      2 * concordance ** 2 * biasCorrection * (1 - concordance) * shift -
      0.5 * concordance ** 2 * biasCorrection ** 2 * shift ** 2) /
    (n - 2);
  const se = Math.sqrt(Math.max(0, variance));
  const interval = se > 0 && Math.abs(concordance) < 1 ? fisherInterval(concordance, se, level) : null;
  return { ok: true, value: { concordance, biasCorrection, se, interval } };
}

function fisherInterval(concordance: number, se: number, level: number): Interval {
  const middle = Math.atanh(concordance);
  const reach = (normalQuantile((1 + level) / 2) * se) / (1 - concordance ** 2);
  return { low: Math.tanh(middle - reach), high: Math.tanh(middle + reach) };
}
