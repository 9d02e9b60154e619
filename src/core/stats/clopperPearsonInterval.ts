import { betaQuantile } from './betaDistribution.ts';
import { type Interval, requireLevel } from './interval.ts';
import { requireShare } from './requireShare.ts';

/**
 * "Exact" interval of a share (Clopper and Pearson): never covers less than its level, often more, so it is wider than Wilson's.
 * @param successes  whole number, 0..trials
 * @param trials     whole number, 1 or more
 * @param level      default 0.95
 * @returns within 0..1, exactly 0 or 1 at the ends
 * @throws RangeError outside these ranges
 * @accuracy relative 1e-10 against R 4.2.2
 * @source clopperPearson1934
 */
export function clopperPearsonInterval(successes: number, trials: number, level = 0.95): Interval {
  requireShare(successes, trials);
  const tail = (1 - requireLevel(level)) / 2;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, trials - successes + 1),
    high: successes === trials ? 1 : betaQuantile(1 - tail, successes + 1, trials - successes),
  };
}
