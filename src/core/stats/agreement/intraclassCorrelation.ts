import { fQuantile } from '../fDistribution.ts';
import { type Interval, requireLevel } from '../interval.ts';
import type { Result } from '../result.ts';

/** The forms of Shrout and Fleiss: 1 = other raters for each unit, 2 = the same raters, a sample of many, 3 = these raters only; k = mean of them. */
export const ICC_FORMS = ['icc1', 'icc2', 'icc3', 'icc1k', 'icc2k', 'icc3k'] as const;
export type IccForm = (typeof ICC_FORMS)[number];

export interface IntraclassCorrelation {
  readonly units: number;
  readonly raters: number;
  /** null where the estimated variance that it is a share of is not above 0. May be negative, far below -1 for means. */
  readonly values: Readonly<Record<IccForm, number | null>>;
  /** By F; null where the raters never differ beyond their level, so that F has no bound. */
  readonly intervals: Readonly<Record<IccForm, Interval | null>>;
  readonly meanSquares: {
    readonly units: number;
    readonly raters: number;
    /** Within units, raters and residual together. */
    readonly within: number;
    readonly residual: number;
  };
}

/**
 * Intraclass correlations: the share of the variance that lies between units, in six forms.
 * @param matrix  units x raters, complete, two of each or more, finite
 * @param level   of the intervals, default 0.95
 * @returns `no-spread` where all values are equal
 * @throws RangeError naming the row or value
 * @accuracy values and intervals relative 1e-8 against psych 2.2.9 for R 4.2.2 (test beside this file)
 * @source shroutFleiss1979; mcgrawWong1996
 */
export function intraclassCorrelation(matrix: readonly (readonly number[])[], level = 0.95): Result<IntraclassCorrelation, 'no-spread'> {
  requireLevel(level);
  const k = requireMatrix(matrix);
  const n = matrix.length;
  const meanSquares = meanSquaresOf(matrix, k);
  const { units, raters, within, residual } = meanSquares;
  if (units === 0 && within === 0) return { ok: false, reason: 'no-spread' };
  const between = (k * (raters - residual)) / n;
  const values = {
    icc1: quotient(units - within, units + (k - 1) * within),
    icc2: quotient(units - residual, units + (k - 1) * residual + between),
    icc3: quotient(units - residual, units + (k - 1) * residual),
    icc1k: quotient(units - within, units),
    icc2k: quotient(units - residual, units + (raters - residual) / n),
    icc3k: quotient(units - residual, units),
  };
  return { ok: true, value: { units: n, raters: k, values, intervals: intervalsOf(values.icc2, meanSquares, n, k, level), meanSquares } };
}

/** A total variance of 0 or less is an estimate that failed: no share can be taken of it. */
const quotient = (above: number, below: number): number | null => (below > 0 ? above / below : null);

function intervalsOf(
  icc2: number | null,
  { units, raters, within, residual }: IntraclassCorrelation['meanSquares'],
  n: number,
  k: number,
  level: number,
): IntraclassCorrelation['intervals'] {
  const p = (1 + level) / 2;
  const fInterval = (noise: number, df: number): Interval | null =>
    noise > 0 && units > 0 ? { low: units / noise / fQuantile(p, n - 1, df), high: (units / noise) * fQuantile(p, df, n - 1) } : null;
  const single = (f: number) => (f - 1) / (f + k - 1);
  const mean = (f: number) => 1 - 1 / f;
  const one = fInterval(within, n * (k - 1));
  const three = fInterval(residual, (n - 1) * (k - 1));
  const two = residual > 0 && icc2 !== null ? secondForm(icc2, { units, raters, residual }, { n, k, p }) : null;
  const ofMean = (icc: number) => (icc * k) / (1 + icc * (k - 1));
  return {
    icc1: mapEnds(one, single),
    icc2: two,
    icc3: mapEnds(three, single),
    icc1k: mapEnds(one, mean),
    icc2k: mapEnds(two, ofMean),
    icc3k: mapEnds(three, mean),
  };
}

/** The second form mixes three mean squares; its degrees of freedom are approximate (Satterthwaite). */
function secondForm(
  icc: number,
  { units, raters, residual }: { readonly units: number; readonly raters: number; readonly residual: number },
  { n, k, p }: { readonly n: number; readonly k: number; readonly p: number },
): Interval | null {
  const ofRaters = (k * icc * raters) / residual;
  const rest = n * (1 + (k - 1) * icc) - k * icc;
  const df = ((k - 1) * (n - 1) * (ofRaters + rest) ** 2) / ((n - 1) * ofRaters ** 2 + rest ** 2);
  if (!(df > 0)) return null;
  const noise = k * raters + (k * n - k - n) * residual;
  const upper = fQuantile(p, n - 1, df);
  const lower = fQuantile(p, df, n - 1);
  const low = (n * (units - upper * residual)) / (upper * noise + n * units);
  const high = (n * (lower * units - residual)) / (noise + n * lower * units);
  return Number.isFinite(low) && Number.isFinite(high) ? { low, high } : null;
}

function mapEnds(interval: Interval | null, map: (end: number) => number): Interval | null {
  if (interval === null) return null;
  const [low, high] = [map(interval.low), map(interval.high)];
  return Number.isFinite(low) && Number.isFinite(high) ? { low, high } : null;
}

function meanSquaresOf(matrix: readonly (readonly number[])[], k: number): IntraclassCorrelation['meanSquares'] {
  const n = matrix.length;
  // From the first value, so that equal values leave exactly nothing.
  const origin = matrix[0]?.[0] ?? 0;
  const values = matrix.map((row) => row.map((value) => value - origin));
  const rowMeans = values.map(meanOf);
  const columnMeans = Array.from({ length: k }, (_, j) => meanOf(values.map((row) => row[j] as number)));
  const grand = meanOf(rowMeans);
  const sum = (cell: (value: number, i: number, j: number) => number) =>
    values.reduce((all, row, i) => all + row.reduce((part, value, j) => part + cell(value, i, j) ** 2, 0), 0);
  const total = sum((value) => value - grand);
  const clean = (squares: number) => (squares > ROUNDING * total ? squares : 0);
  return {
    units: clean(sum((_, i) => (rowMeans[i] as number) - grand)) / (n - 1),
    raters: clean(sum((_, _i, j) => (columnMeans[j] as number) - grand)) / (k - 1),
    within: clean(sum((value, i) => value - (rowMeans[i] as number))) / (n * (k - 1)),
    residual: clean(sum((value, i, j) => value - (rowMeans[i] as number) - (columnMeans[j] as number) + grand)) / ((n - 1) * (k - 1)),
  };
}

/** Sums of squares below this share of the whole are rounding. */
const ROUNDING = 1e-24;

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** @returns the number of raters */
function requireMatrix(matrix: readonly (readonly number[])[]): number {
  const k = matrix[0]?.length ?? 0;
  if (matrix.length < 2) throw new RangeError(`matrix must hold at least two units: ${matrix.length}`);
  matrix.forEach((row, i) => {
    if (row.length < 2) throw new RangeError(`matrix.${i} must hold at least two raters: ${row.length}`);
    if (row.length !== k) throw new RangeError(`matrix.${i} must hold ${k} raters like the first unit: ${row.length}`);
    row.forEach((value, j) => {
      if (!Number.isFinite(value)) throw new RangeError(`matrix.${i}.${j} must be finite: ${value}`);
    });
  });
  return k;
}
