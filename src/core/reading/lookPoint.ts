import { keepByTable } from '../keep/keepByTable.ts';
import { normalQuantile } from '../stats/normal.ts';
import type { NoiseTable } from './noiseTable.ts';

/**
 * How many standard deviations a single comparison must pass, so that over all of them noise alone passes at least once with the
 * stated chance at most (Sidak): 1 - (1 - chance)^(1 / comparisons), two-sided.
 * It holds whatever each reading is compared with, the last, the first or the mean of all before: for normal differences with any
 * correlation, staying within every limit is at least as likely as if they were independent (Sidak 1967).
 * @param comparisons  whole, from 1
 * @param chance       between 0 and 1, exclusive
 * @throws RangeError naming the parameter
 * @accuracy against 400,000 simulated people (readings against the last, the first, and the mean of those before) at most the stated chance
 * @source sidak1967
 */
export function lookPoint(comparisons: number, chance: number): number {
  if (!(Number.isSafeInteger(comparisons) && comparisons >= 1))
    throw new RangeError(`comparisons must be a whole number of at least 1: ${comparisons}`);
  if (!(chance > 0 && chance < 1)) throw new RangeError(`chance must be between 0 and 1, exclusive: ${chance}`);
  const each = -Math.expm1(Math.log1p(-chance) / comparisons);
  return -normalQuantile(each / 2);
}

/** For readings each compared with earlier ones: one comparison fewer than readings. */
export const changePoint = keepByTable(({ looks }: NoiseTable) => lookPoint(looks.visits - 1, looks.chance));

/** For a trend that is told anew at each of them. */
export const trendPoint = keepByTable(({ looks }: NoiseTable) => lookPoint(looks.visits, looks.chance));
