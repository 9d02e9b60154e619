import { around, type Interval, requireLevel } from '../interval.ts';
import { Z_95 } from '../normal.ts';
import { pairMoments, requirePairs } from '../pairMoments.ts';
import type { Result } from '../result.ts';
import { studentTQuantile } from '../studentT.ts';

export interface BlandAltman {
  readonly n: number;
  /** Mean of a - b. */
  readonly bias: number;
  /** Standard deviation of a - b, divisor n - 1. */
  readonly sd: number;
  /** bias -+ 1.96 sd: about 95 in 100 differences are expected between them. */
  readonly limits: Interval;
  readonly biasInterval: Interval;
  /** Standard error of either limit: sd sqrt(1 / n + 1.96^2 / (2 (n - 1))). */
  readonly limitSe: number;
  /** By t and that standard error; `exactLimitIntervals` gives the exact ones. */
  readonly lowerLimitInterval: Interval;
  readonly upperLimitInterval: Interval;
}

/**
 * Limits of agreement between two ways of measuring the same things.
 * With logs handed in, bias and limits are logs of ratios: exp(bias) is the geometric mean of a / b, and exp(limits) holds about 95 in
 * 100 ratios. They speak of every level only if the difference does not depend on the level, which Deming and Passing-Bablok show.
 * @param a      n values, one for each thing measured
 * @param b      n values, b[i] on the same thing as a[i]
 * @param level  of the three intervals, default 0.95; the limits stay at 1.96 sd
 * @returns `too-few` under two pairs; differences that are all equal give sd 0 and no width
 * @throws RangeError for lists of different length, values that are not finite, a level outside (0, 1)
 * @accuracy relative 1e-12 against R 4.2.2 (test beside this file)
 * @source blandAltman1986; blandAltman1999
 */
export function blandAltman(a: readonly number[], b: readonly number[], level = 0.95): Result<BlandAltman, 'too-few'> {
  requirePairs(a, b);
  requireLevel(level);
  const differences = a.map((value, i) => value - (b[i] as number));
  const { n, meanA: bias, saa } = pairMoments(differences, differences);
  if (n < 2) return { ok: false, reason: 'too-few' };
  const sd = Math.sqrt(saa / (n - 1));
  const t = studentTQuantile((1 + level) / 2, n - 1);
  const limits = around(bias, Z_95 * sd);
  const limitSe = sd * Math.sqrt(1 / n + Z_95 ** 2 / (2 * (n - 1)));
  return {
    ok: true,
    value: {
      n,
      bias,
      sd,
      limits,
      biasInterval: around(bias, (t * sd) / Math.sqrt(n)),
      limitSe,
      lowerLimitInterval: around(limits.low, t * limitSe),
      upperLimitInterval: around(limits.high, t * limitSe),
    },
  };
}
