import { around, type Interval, requireLevel } from '../interval.ts';
import { type PairMoments, pairMoments } from '../pairMoments.ts';
import { requireAboveZero } from '../requireArgument.ts';
import type { Result } from '../result.ts';
import { studentTQuantile } from '../studentT.ts';

export interface DemingLine {
  readonly slope: number;
  readonly intercept: number;
}

export interface DemingRegression extends DemingLine {
  /** Jackknife; null under three pairs, or where leaving one pair out leaves no line. */
  readonly slopeSe: number | null;
  readonly interceptSe: number | null;
  /** By t with n - 2. */
  readonly slopeInterval: Interval | null;
  readonly interceptInterval: Interval | null;
}

export interface DemingOptions {
  /** Error variance of b / error variance of a, above 0; default 1. */
  readonly errorRatio?: number | undefined;
  /** Default 0.95. */
  readonly level?: number | undefined;
}

/**
 * Line b = intercept + slope a where both are measured with error (Deming), with jackknife intervals.
 * Least squares of b on a would give a slope too near 0, since a has errors of its own.
 * @param a        n values, finite
 * @param b        n values, b[i] on the same thing as a[i]
 * @returns `too-few` under two pairs, `no-spread` where a and b do not vary, `no-line` where the best line is vertical or any line is as good
 * @throws RangeError for lists of different length, values that are not finite, an error ratio or level out of range
 * @accuracy relative 1e-10 against R 4.2.2 (test beside this file)
 * @source linnet1993
 */
export function demingRegression(
  a: readonly number[],
  b: readonly number[],
  { errorRatio = 1, level = 0.95 }: DemingOptions = {},
): Result<DemingRegression, 'too-few' | 'no-spread' | 'no-line'> {
  requireAboveZero(errorRatio, 'errorRatio');
  requireLevel(level);
  const moments = pairMoments(a, b);
  if (moments.n < 2) return { ok: false, reason: 'too-few' };
  if (moments.saa === 0 && moments.sbb === 0) return { ok: false, reason: 'no-spread' };
  const line = fitLine(moments, errorRatio);
  if (line === undefined) return { ok: false, reason: 'no-line' };
  const se = moments.n < 3 ? undefined : jackknife(a, b, moments, line, errorRatio);
  if (se === undefined)
    return { ok: true, value: { ...line, slopeSe: null, interceptSe: null, slopeInterval: null, interceptInterval: null } };
  const t = studentTQuantile((1 + level) / 2, moments.n - 2);
  return {
    ok: true,
    value: {
      ...line,
      slopeSe: se.slope,
      interceptSe: se.intercept,
      slopeInterval: around(line.slope, t * se.slope),
      interceptInterval: around(line.intercept, t * se.intercept),
    },
  };
}

/** Sums below this share of their whole are rounding. */
const ROUNDING = 1e-12;

function fitLine({ meanA, meanB, saa, sbb, sab }: PairMoments, errorRatio: number): DemingLine | undefined {
  const difference = sbb - errorRatio * saa;
  const root = Math.hypot(difference, 2 * Math.sqrt(errorRatio) * sab);
  // Both forms are the same root; each loses its digits where the other does not.
  const slope = difference > 0 ? (difference + root) / (2 * sab) : (2 * errorRatio * sab) / (root - difference);
  return finiteLine({ slope, intercept: meanB - slope * meanA });
}

/** Standard errors from the pseudo-values of leaving out each pair; the sums are brought up to date, not computed anew. */
function jackknife(
  a: readonly number[],
  b: readonly number[],
  moments: PairMoments,
  line: DemingLine,
  errorRatio: number,
): DemingLine | undefined {
  const { n, meanA, meanB, saa, sbb, sab } = moments;
  const share = n / (n - 1);
  const slopes: number[] = [];
  const intercepts: number[] = [];
  for (let i = 0; i < n; i++) {
    const da = (a[i] as number) - meanA;
    const db = (b[i] as number) - meanB;
    const without = fitLine(
      {
        n: n - 1,
        meanA: meanA - da / (n - 1),
        meanB: meanB - db / (n - 1),
        saa: clean(saa - share * da * da, saa),
        sbb: clean(sbb - share * db * db, sbb),
        sab: clean(sab - share * da * db, Math.sqrt(saa * sbb)),
      },
      errorRatio,
    );
    if (without === undefined) return undefined;
    slopes.push(n * line.slope - (n - 1) * without.slope);
    intercepts.push(n * line.intercept - (n - 1) * without.intercept);
  }
  const { saa: ofSlopes, sbb: ofIntercepts } = pairMoments(slopes, intercepts);
  const se = (sumOfSquares: number) => Math.sqrt(sumOfSquares / (n - 1) / n);
  return finiteLine({ slope: se(ofSlopes), intercept: se(ofIntercepts) });
}

const finiteLine = (line: DemingLine): DemingLine | undefined =>
  Number.isFinite(line.slope) && Number.isFinite(line.intercept) ? line : undefined;

const clean = (sum: number, whole: number): number => (Math.abs(sum) <= ROUNDING * whole ? 0 : sum);
