import type { Interval } from './interval.ts';
import { type LackOfFit, lackOfFit, type NoLackReason } from './lackOfFit.ts';
import { lineFit, type NoLineReason } from './lineFit.ts';
import { type NoTermReason, type QuadraticTerm, quadraticTerm } from './quadraticTerm.ts';
import type { Result } from './result.ts';
import { studentTTwoSidedP } from './studentT.ts';

export interface DilutionPoint {
  /** Known amount, any unit, above 0. */
  readonly level: number;
  /** Reading, above 0. */
  readonly value: number;
}

export interface DilutionLinearity {
  readonly intercept: number;
  /** 1 where ten times the amount gives ten times the reading. */
  readonly slope: number;
  readonly slopeInterval: Interval;
  readonly r2: number;
  readonly residualSd: number;
  /** Two-sided, of a slope of 1; undefined where every point lies on the line. */
  readonly pSlopeOne: number | undefined;
  readonly lackOfFit: Result<LackOfFit, NoLackReason>;
  readonly quadratic: Result<QuadraticTerm, NoTermReason>;
}

/**
 * Does the reading follow the amount over a series of dilutions? Line through log10 of both, with the two tests for a bend.
 * Logs to the base 10, unlike everywhere else, because dilutions are thought of in tenfolds.
 * @param points  unlogged, any order; replicates are points with exactly the same level
 * @returns the line, or ok: false with fewer than three points, one level, or readings that are all the same
 * @throws RangeError naming a level or value that is not above 0
 * @accuracy 1e-12 against R 4.2.2, the p values 1e-9
 * @source montgomery-peck2012
 */
export function dilutionLinearity(points: readonly DilutionPoint[]): Result<DilutionLinearity, NoLineReason> {
  for (const [i, point] of points.entries())
    for (const field of ['level', 'value'] as const)
      if (!(point[field] > 0 && Number.isFinite(point[field])))
        throw new RangeError(`points.${i}.${field} must be above 0, as its log is taken: ${point[field]}`);
  const x = points.map(({ level }) => Math.log10(level));
  const y = points.map(({ value }) => Math.log10(value));
  const line = lineFit(x, y);
  if (!line.ok) return line;
  const { intercept, slope, slopeSe, slopeInterval, r2, residualSd, n } = line.value;
  return {
    ok: true,
    value: {
      intercept,
      slope,
      slopeInterval,
      r2,
      residualSd,
      pSlopeOne: slopeSe > 0 ? studentTTwoSidedP((slope - 1) / slopeSe, n - 2) : undefined,
      lackOfFit: lackOfFit(x, y),
      quadratic: quadraticTerm(x, y),
    },
  };
}
