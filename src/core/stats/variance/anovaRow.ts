import { compensatedSum } from '../compensatedSum.ts';
import { fUpperP } from '../fDistribution.ts';

/** One line of an analysis of variance. */
export interface AnovaRow {
  readonly sumSquares: number;
  readonly df: number;
  readonly meanSquare: number;
}

/** A line that is tested against another one. */
export interface TestedRow extends AnovaRow {
  /** Mean square over that of the error of this line; null where that is 0. */
  readonly f: number | null;
  readonly p: number | null;
}

/** `deviations` each count `times` times: the number of values behind one mean. */
export function anovaRow(deviations: readonly number[], times: number, df: number): AnovaRow {
  const sumSquares = times * compensatedSum(deviations.map((d) => d * d));
  return { sumSquares, df, meanSquare: sumSquares / df };
}

export function testedRow(row: AnovaRow, error: AnovaRow): TestedRow {
  if (!(error.meanSquare > 0)) return { ...row, f: null, p: null };
  const f = row.meanSquare / error.meanSquare;
  return { ...row, f, p: fUpperP(f, row.df, error.df) };
}
