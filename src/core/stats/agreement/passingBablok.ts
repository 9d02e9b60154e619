import { type Interval, requireLevel } from '../interval.ts';
import { normalQuantile } from '../normal.ts';
import { requirePairs } from '../pairMoments.ts';
import type { Result } from '../result.ts';

export interface PassingBablok {
  readonly slope: number;
  readonly intercept: number;
  /** null where too few slopes, or a vertical one, leave a limit open. */
  readonly slopeInterval: Interval | null;
  readonly interceptInterval: Interval | null;
}

/** All slopes between pairs are held at once: 4,000 pairs make 8 million. */
export const MOST_PAIRS = 4000;

/**
 * Line b = intercept + slope a by the shifted median of all slopes between two points (Passing and Bablok, 1983): no assumption on the
 * distribution of errors, and outliers hardly move it. For two methods of one quantity, so the slope is positive.
 * Slopes of exactly -1 and pairs of equal points are left out; the rank of the lower limit is rounded half to even.
 * @param a      n values, finite, at most 4,000
 * @param b      n values, b[i] on the same thing as a[i]
 * @param level  default 0.95
 * @returns `too-few` under three pairs, `no-spread` where all points are equal, `no-line` where the middle slope is vertical
 * @throws RangeError for lists of different length or too long, values that are not finite, a level outside (0, 1)
 * @accuracy relative 1e-12 against an independent program in R 4.2.2 (test beside this file)
 * @source passingBablok1983
 */
export function passingBablok(
  a: readonly number[],
  b: readonly number[],
  level = 0.95,
): Result<PassingBablok, 'too-few' | 'no-spread' | 'no-line'> {
  requirePairs(a, b);
  requireLevel(level);
  const n = a.length;
  if (n < 3) return { ok: false, reason: 'too-few' };
  if (n > MOST_PAIRS) throw new RangeError(`a must hold at most ${MOST_PAIRS} values: ${n}`);
  const slopes = sortedSlopes(a, b);
  const count = slopes.length;
  if (count === 0) return { ok: false, reason: 'no-spread' };
  const shift = slopes.findIndex((slope) => slope >= -1);
  const offset = shift < 0 ? count : shift;
  const ranked = (rank: number): number | undefined => slopes[rank + offset - 1];
  const slope = middleOf(ranked(Math.floor((count + 1) / 2)), ranked(Math.ceil((count + 1) / 2)));
  if (slope === undefined) return { ok: false, reason: 'no-line' };
  const reach = normalQuantile((1 + level) / 2) * Math.sqrt((n * (n - 1) * (2 * n + 5)) / 18);
  const lowRank = roundHalfEven((count - reach) / 2);
  const slopeInterval = lowRank < 1 ? null : intervalOf(ranked(lowRank), ranked(count - lowRank + 1));
  return {
    ok: true,
    value: {
      slope,
      intercept: medianOffset(a, b, slope),
      slopeInterval,
      interceptInterval: slopeInterval && {
        low: medianOffset(a, b, slopeInterval.high),
        high: medianOffset(a, b, slopeInterval.low),
      },
    },
  };
}

/** Ascending; vertical ones as infinities, so that they keep their place in the order. */
function sortedSlopes(a: readonly number[], b: readonly number[]): Float64Array {
  const n = a.length;
  const slopes = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const slope = ((b[i] as number) - (b[j] as number)) / ((a[i] as number) - (a[j] as number));
      // 0 / 0 is not a number: the two points are one.
      if (slope !== -1 && !Number.isNaN(slope)) slopes[count++] = slope;
    }
  }
  return slopes.subarray(0, count).sort();
}

function middleOf(one: number | undefined, other: number | undefined): number | undefined {
  if (one === undefined || other === undefined) return undefined;
  const middle = (one + other) / 2;
  return Number.isFinite(middle) ? middle : undefined;
}

function intervalOf(low: number | undefined, high: number | undefined): Interval | null {
  return low !== undefined && high !== undefined && Number.isFinite(low) && Number.isFinite(high) ? { low, high } : null;
}

function medianOffset(a: readonly number[], b: readonly number[], slope: number): number {
  const offsets = Float64Array.from(a, (value, i) => (b[i] as number) - slope * value).sort();
  const half = (offsets.length - 1) / 2;
  return ((offsets[Math.floor(half)] as number) + (offsets[Math.ceil(half)] as number)) / 2;
}

function roundHalfEven(value: number): number {
  const floor = Math.floor(value);
  const part = value - floor;
  if (part !== 0.5) return Math.round(value);
  return floor % 2 === 0 ? floor : floor + 1;
}
