import type { Interval } from './interval.ts';
import { Z_95 } from './normal.ts';
import { requireAboveZero } from './requireArgument.ts';
import { requireShare } from './requireShare.ts';

/**
 * Score interval of a share (Wilson), without correction for continuity.
 * Not the normal one, which has no width at 0 and at all.
 * @param successes  whole number, 0..trials
 * @param trials     whole number, 1 or more
 * @param z          above 0, default 1.959964 (95 %)
 * @returns within 0..1, holds successes / trials, exactly 0 or 1 at the ends
 * @throws RangeError outside these ranges
 * @accuracy relative 1e-12 against R 4.2.2; 4 places as published
 * @source wilson1927; newcombe1998
 */
export function wilsonInterval(successes: number, trials: number, z = Z_95): Interval {
  requireShare(successes, trials);
  requireAboveZero(z, 'z');
  const share = successes / trials;
  const square = z ** 2;
  const middle = share + square / (2 * trials);
  const reach = z * Math.sqrt((share * (1 - share)) / trials + square / (4 * trials ** 2));
  const whole = 1 + square / trials;
  return {
    low: successes === 0 ? 0 : Math.min(share, (middle - reach) / whole),
    high: successes === trials ? 1 : Math.max(share, (middle + reach) / whole),
  };
}
