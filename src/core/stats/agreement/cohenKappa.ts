import { around, type Interval, requireLevel } from '../interval.ts';
import { normalQuantile } from '../normal.ts';
import type { Result } from '../result.ts';

/** How much a disagreement counts: fully, by its distance, or by the square of its distance (categories then stand in order). */
export type KappaWeights = 'none' | 'linear' | 'quadratic';

export interface CohenKappa {
  readonly n: number;
  /** 1 = full agreement, 0 = what the two marginal distributions give by chance. */
  readonly kappa: number;
  /** Fleiss, Cohen and Everitt, for a kappa that need not be 0. */
  readonly se: number;
  /** Within -1..1; null where the standard error is 0: full agreement says nothing of its own width. */
  readonly interval: Interval | null;
  /** Weighted share of agreement, seen and expected by chance, 0..1. */
  readonly observed: number;
  readonly expected: number;
}

/**
 * Agreement of two raters on the same units, beyond chance.
 * Kappa falls when one category is rare even though the raters are as good: compare it only between like sets of cases.
 * @param table    square, two categories or more; table[i][j] = units put in i by the first and in j by the second, counts
 * @param weights  default none
 * @param level    default 0.95, normal
 * @returns `no-units` for an empty table, `one-category` where both used a single one (agreement by chance is then full)
 * @throws RangeError naming the cell or row; for a table that is not square
 * @accuracy relative 1e-12 against R 4.2.2 and vcd 1.4 (test beside this file)
 * @source cohen1960; cohen1968; fleissCohenEveritt1969
 */
export function cohenKappa(
  table: readonly (readonly number[])[],
  weights: KappaWeights = 'none',
  level = 0.95,
): Result<CohenKappa, 'no-units' | 'one-category'> {
  requireLevel(level);
  requireSquare(table);
  const categories = table.length;
  const rows = table.map(sumOf);
  const columns = table.map((_, j) => sumOf(table.map((row) => row[j] as number)));
  const n = sumOf(rows);
  if (n === 0) return { ok: false, reason: 'no-units' };
  const weight = weightOf(weights, categories);
  // Mean weight of a unit by what one of the two raters said of it.
  const rowMeans = rows.map((_, i) => sumOf(columns.map((column, j) => weight(i, j) * column)) / n);
  const columnMeans = columns.map((_, j) => sumOf(rows.map((row, i) => weight(i, j) * row)) / n);
  const observed = sumOf(table.map((row, i) => sumOf(row.map((count, j) => weight(i, j) * count)))) / n;
  const expected = sumOf(rows.map((row, i) => row * (rowMeans[i] as number))) / n;
  if (rows.some((row, i) => row === n && columns[i] === n)) return { ok: false, reason: 'one-category' };
  const squares = sumOf(
    table.map((row, i) =>
      sumOf(
        row.map((count, j) => {
          const means = (rowMeans[i] as number) + (columnMeans[j] as number);
          return count * (weight(i, j) * (1 - expected) - means * (1 - observed)) ** 2;
        }),
      ),
    ),
  );
  const variance = (squares / n - (observed * expected - 2 * expected + observed) ** 2) / (n * (1 - expected) ** 4);
  const kappa = (observed - expected) / (1 - expected);
  const se = variance > ROUNDING ? Math.sqrt(variance) : 0;
  return { ok: true, value: { n, kappa, se, interval: se > 0 ? within(kappa, se, level) : null, observed, expected } };
}

/** A variance below this is what is left of 0 after rounding. */
const ROUNDING = 1e-15;

function within(kappa: number, se: number, level: number): Interval {
  const { low, high } = around(kappa, normalQuantile((1 + level) / 2) * se);
  return { low: Math.max(-1, low), high: Math.min(1, high) };
}

function weightOf(weights: KappaWeights, categories: number): (i: number, j: number) => number {
  const steps = categories - 1;
  if (weights === 'none') return (i, j) => (i === j ? 1 : 0);
  return weights === 'linear' ? (i, j) => 1 - Math.abs(i - j) / steps : (i, j) => 1 - ((i - j) / steps) ** 2;
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

function requireSquare(table: readonly (readonly number[])[]): void {
  if (table.length < 2) throw new RangeError(`table must have at least two categories: ${table.length}`);
  table.forEach((row, i) => {
    if (row.length !== table.length) throw new RangeError(`table.${i} must have as many columns as the table has rows: ${row.length}`);
    row.forEach((count, j) => {
      if (!(Number.isSafeInteger(count) && count >= 0)) throw new RangeError(`table.${i}.${j} must be a count: ${count}`);
    });
  });
}
