import { around, type Interval } from './interval.ts';
import { pairMoments } from './pairMoments.ts';
import type { Result } from './result.ts';
import { studentTQuantile } from './studentT.ts';

export interface LineFit {
  readonly n: number;
  readonly intercept: number;
  readonly slope: number;
  readonly interceptSe: number;
  readonly slopeSe: number;
  /** 95 %, by t. */
  readonly slopeInterval: Interval;
  readonly residualSd: number;
  readonly r2: number;
  /** y minus the line, in the order of the points. */
  readonly residuals: readonly number[];
}

/** `one-level`: every x is the same; `no-spread`: every y is. */
export type NoLineReason = 'too-few-points' | 'one-level' | 'no-spread';

/**
 * Straight line of y on x by least squares.
 * @param x  n values, finite
 * @param y  n values, finite
 * @returns the line, or ok: false with fewer than three points or without spread
 * @throws RangeError naming x or y for lists of different length or a value that is not finite
 * @accuracy 12 digits of slope, intercept and residual sd on the NIST set Norris (lineFit.test.ts)
 * @source nist-strd
 */
export function lineFit(x: readonly number[], y: readonly number[]): Result<LineFit, NoLineReason> {
  requirePoints(x, y);
  const n = x.length;
  if (n < 3) return { ok: false, reason: 'too-few-points' };
  const { meanA: meanX, meanB: meanY, saa: sxx, sbb: syy, sab: sxy } = pairMoments(x, y);
  if (!(sxx > 0)) return { ok: false, reason: 'one-level' };
  if (!(syy > 0)) return { ok: false, reason: 'no-spread' };
  const slope = sxy / sxx;
  const residuals = y.map((value, i) => value - meanY - slope * ((x[i] ?? meanX) - meanX));
  const squares = residuals.reduce((sum, r) => sum + r * r, 0);
  const residualSd = Math.sqrt(squares / (n - 2));
  const slopeSe = residualSd / Math.sqrt(sxx);
  return {
    ok: true,
    value: {
      n,
      intercept: meanY - slope * meanX,
      slope,
      interceptSe: residualSd * Math.sqrt(1 / n + meanX ** 2 / sxx),
      slopeSe,
      slopeInterval: around(slope, studentTQuantile(0.975, n - 2) * slopeSe),
      residualSd,
      r2: 1 - squares / syy,
      residuals,
    },
  };
}

/** @throws RangeError naming x or y */
export function requirePoints(x: readonly number[], y: readonly number[]): void {
  if (x.length !== y.length) throw new RangeError(`y must hold as many values as x: ${y.length} instead of ${x.length}`);
  for (const [name, values] of [
    ['x', x],
    ['y', y],
  ] as const) {
    for (const [i, value] of values.entries()) if (!Number.isFinite(value)) throw new RangeError(`${name}.${i} must be finite: ${value}`);
  }
}
