import { lineFit, type NoLineReason } from './lineFit.ts';
import { pairMoments } from './pairMoments.ts';
import type { Result } from './result.ts';
import { studentTTwoSidedP } from './studentT.ts';

export interface QuadraticTerm {
  /** Of x² beside a line: above 0 the curve opens upwards. */
  readonly coefficient: number;
  readonly se: number;
  /** Two-sided, of no curvature. */
  readonly p: number;
}

/** `exact-fit`: no spread is left beside the curve, so there is nothing to judge it by. */
export type NoTermReason = NoLineReason | 'two-levels' | 'exact-fit';

/**
 * Is a straight line bent? Adds a term in x² to the line and tests it by t.
 * Fitted as the part of x² that a line in x cannot follow, which needs no matrix.
 * @param x  n values, finite, at least three levels and four points
 * @param y  n values, finite
 * @throws RangeError naming x or y
 * @accuracy 1e-9 against R 4.2.2 (dilutionLinearity.test.ts)
 * @source montgomery-peck2012
 */
export function quadraticTerm(x: readonly number[], y: readonly number[]): Result<QuadraticTerm, NoTermReason> {
  const line = lineFit(x, y);
  if (!line.ok) return line;
  const { n, residuals } = line.value;
  if (n < 4) return { ok: false, reason: 'too-few-points' };
  const { meanA: mean } = pairMoments(x, y);
  const centred = x.map((value) => value - mean);
  const bend = lineFit(
    centred,
    centred.map((value) => value ** 2),
  );
  if (new Set(x).size < 3 || !bend.ok) return { ok: false, reason: 'two-levels' };
  const squares = bend.value.residuals.reduce((sum, r) => sum + r * r, 0);
  const coefficient = bend.value.residuals.reduce((sum, r, i) => sum + r * (residuals[i] ?? 0), 0) / squares;
  const left = residuals.reduce((sum, r, i) => sum + (r - coefficient * (bend.value.residuals[i] ?? 0)) ** 2, 0);
  const se = Math.sqrt(left / (n - 3) / squares);
  if (!(se > Math.abs(coefficient) * 1e-13)) return { ok: false, reason: 'exact-fit' };
  return { ok: true, value: { coefficient, se, p: studentTTwoSidedP(coefficient / se, n - 3) } };
}
