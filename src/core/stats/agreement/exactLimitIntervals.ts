import { type Interval, requireLevel } from '../interval.ts';
import { noncentralTQuantile } from '../noncentralT.ts';
import { Z_95 } from '../normal.ts';
import { requireAboveZero } from '../requireArgument.ts';

/**
 * Exact intervals of both limits of agreement, for normal differences: the limit of n differences is a noncentral t.
 * Not symmetric about the limit: with few pairs the true limits may lie much further out than the approximate interval says.
 * @param bias   mean difference
 * @param sd     standard deviation of the differences, above 0
 * @param n      number of pairs, 2 or more
 * @param level  default 0.95, each interval by itself
 * @throws RangeError outside these ranges
 * @accuracy relative 1e-9 against the noncentral t of R 4.2.2 (test beside this file)
 * @source carkeet2015
 */
export function exactLimitIntervals(
  { bias, sd, n }: { readonly bias: number; readonly sd: number; readonly n: number },
  level = 0.95,
): { readonly lower: Interval; readonly upper: Interval } {
  requireAboveZero(sd, 'sd');
  requireLevel(level);
  if (!(Number.isSafeInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number of at least 2: ${n}`);
  const noncentrality = Z_95 * Math.sqrt(n);
  const [near, far] = [(1 - level) / 2, (1 + level) / 2].map((p) => (sd * noncentralTQuantile(p, n - 1, noncentrality)) / Math.sqrt(n)) as [
    number,
    number,
  ];
  return { lower: { low: bias - far, high: bias - near }, upper: { low: bias + near, high: bias + far } };
}
