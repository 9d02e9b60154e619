import { centredValues } from './centredValues.ts';
import { fUpperP } from './fDistribution.ts';
import { lineFit, type NoLineReason } from './lineFit.ts';
import type { Result } from './result.ts';

export interface LackOfFit {
  readonly f: number;
  readonly dfLack: number;
  readonly dfError: number;
  /** Chance of an F this large if the straight line were true. */
  readonly p: number;
}

/** `two-levels`: a line always goes through two means; `no-replicates`: no x occurs twice; `replicates-equal`: they differ nowhere. */
export type NoLackReason = NoLineReason | 'two-levels' | 'no-replicates' | 'replicates-equal';

/**
 * Does a straight line go through the means of the levels? F test of the distance of the means from the line against the spread of the
 * replicates at one x.
 * @param x  n values, finite; replicates are those with exactly the same x
 * @param y  n values, finite
 * @throws RangeError naming x or y
 * @accuracy 1e-9 against R 4.2.2 (dilutionLinearity.test.ts)
 * @source montgomery-peck2012
 */
export function lackOfFit(x: readonly number[], y: readonly number[]): Result<LackOfFit, NoLackReason> {
  const line = lineFit(x, y);
  if (!line.ok) return line;
  const atLevel = new Map<number, number[]>();
  for (const [i, level] of x.entries()) atLevel.set(level, [...(atLevel.get(level) ?? []), line.value.residuals[i] ?? 0]);
  const dfLack = atLevel.size - 2;
  const dfError = x.length - atLevel.size;
  if (dfLack < 1) return { ok: false, reason: 'two-levels' };
  if (dfError < 1) return { ok: false, reason: 'no-replicates' };
  let [lack, error] = [0, 0];
  for (const residuals of atLevel.values()) {
    const { mean, deviations } = centredValues(residuals);
    lack += residuals.length * mean ** 2;
    error += deviations.reduce((sum, d) => sum + d * d, 0);
  }
  // Replicates that differ by rounding alone do not differ.
  if (!(error > ROUNDING * x.reduce((sum, _, i) => sum + (y[i] ?? 0) ** 2, 0))) return { ok: false, reason: 'replicates-equal' };
  const f = lack / dfLack / (error / dfError);
  return { ok: true, value: { f, dfLack, dfError, p: fUpperP(f, dfLack, dfError) } };
}

/** Relative to the sum of squares of y: what rounding of a double leaves, squared. */
const ROUNDING = 1e-30;
