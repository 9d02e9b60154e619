import type { Result } from '../result.ts';

export interface FleissKappa {
  readonly kappa: number;
  /** Against no agreement beyond chance, null variance of Fleiss, Nee and Landis. */
  readonly z: number;
  /** The standard error under no agreement: for the test, not for an interval. */
  readonly nullSe: number;
  readonly observed: number;
  readonly expected: number;
  /** Agreement on each category against all others; null for a category that nobody or everybody used. */
  readonly byCategory: readonly (number | null)[];
}

/**
 * Agreement of many raters on the same units, beyond chance; the raters need not be the same persons from unit to unit.
 * @param counts  units x categories; counts[i][j] = raters who put unit i in category j; the same number of raters, two or more, everywhere
 * @returns `too-few-units` under two, `one-category` where all ratings fall in one
 * @throws RangeError naming the row or cell
 * @accuracy relative 1e-12 against R 4.2.2 (test beside this file)
 * @source fleiss1971; fleissNeeLandis1979
 */
export function fleissKappa(counts: readonly (readonly number[])[]): Result<FleissKappa, 'too-few-units' | 'one-category'> {
  const raters = requireCounts(counts);
  const units = counts.length;
  if (units < 2) return { ok: false, reason: 'too-few-units' };
  const totals = (counts[0] ?? []).map((_, j) => counts.reduce((sum, row) => sum + (row[j] as number), 0));
  const ratings = units * raters;
  if (totals.includes(ratings)) return { ok: false, reason: 'one-category' };
  const shares = totals.map((total) => total / ratings);
  const pairs = units * raters * (raters - 1);
  const observed = counts.reduce((sum, row) => sum + row.reduce((part, count) => part + count * (count - 1), 0), 0) / pairs;
  const expected = shares.reduce((sum, p) => sum + p * p, 0);
  const spread = shares.reduce((sum, p) => sum + p * (1 - p), 0);
  const skew = shares.reduce((sum, p) => sum + p * (1 - p) * (1 - 2 * p), 0);
  const nullSe = Math.sqrt((2 * (spread ** 2 - skew)) / pairs) / spread;
  const kappa = (observed - expected) / (1 - expected);
  const byCategory = shares.map((p, j) => {
    if (p === 0) return null;
    const split = counts.reduce((sum, row) => sum + (row[j] as number) * (raters - (row[j] as number)), 0);
    return 1 - split / (pairs * p * (1 - p));
  });
  return { ok: true, value: { kappa, z: kappa / nullSe, nullSe, observed, expected, byCategory } };
}

/** @returns how many raters each unit has */
function requireCounts(counts: readonly (readonly number[])[]): number {
  const first = counts[0];
  if (first === undefined) throw new RangeError('counts must hold at least one unit');
  if (first.length < 2) throw new RangeError(`counts.0 must have at least two categories: ${first.length}`);
  const raters = first.reduce((sum, count) => sum + count, 0);
  counts.forEach((row, i) => {
    if (row.length !== first.length) throw new RangeError(`counts.${i} must have ${first.length} categories: ${row.length}`);
    row.forEach((count, j) => {
      if (!(Number.isSafeInteger(count) && count >= 0)) throw new RangeError(`counts.${i}.${j} must be a count: ${count}`);
    });
    const here = row.reduce((sum, count) => sum + count, 0);
    if (here < 2) throw new RangeError(`counts.${i} must have at least two raters: ${here}`);
    if (here !== raters) throw new RangeError(`counts.${i} must have ${raters} raters like the first unit: ${here}`);
  });
  return raters;
}
