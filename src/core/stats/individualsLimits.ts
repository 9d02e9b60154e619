import type { Result } from './result.ts';

export interface IndividualsLimits {
  readonly mean: number;
  /** Mean moving range / d2: the sd from one value to the next, blind to slow drift. */
  readonly sd: number;
  readonly limits: { readonly low: number; readonly high: number };
  readonly meanMovingRange: number;
  /** Upper limit of the moving range; its lower limit is 0. */
  readonly movingRangeLimit: number;
}

export type NoLimitsReason = 'too-few-values' | 'no-spread';

/** Mean and sd of the range of two standard normal values: 1.1284 and 0.8525. */
const D2 = 2 / Math.sqrt(Math.PI);
const D3 = Math.sqrt(2 - 4 / Math.PI);

/**
 * Chart of single values: mean and three-sigma limits with the sd from the moving range of neighbours.
 * The constants are exact (1.128379...), not rounded to three decimals as in printed tables.
 * @param values  finite, in the order in which they were taken
 * @returns the limits, or ok: false with fewer than two values or where all are the same
 * @throws RangeError for a value that is not finite
 * @accuracy 1e-12 against R 4.2.2 (individualsLimits.test.ts)
 * @source montgomery2013
 */
export function individualsLimits(values: readonly number[]): Result<IndividualsLimits, NoLimitsReason> {
  for (const [i, value] of values.entries()) if (!Number.isFinite(value)) throw new RangeError(`values.${i} must be finite: ${value}`);
  if (values.length < 2) return { ok: false, reason: 'too-few-values' };
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  const meanMovingRange = values.slice(1).reduce((sum, v, i) => sum + Math.abs(v - (values[i] ?? v)), 0) / (values.length - 1);
  if (!(meanMovingRange > 0)) return { ok: false, reason: 'no-spread' };
  const sd = meanMovingRange / D2;
  return {
    ok: true,
    value: {
      mean,
      sd,
      limits: { low: mean - 3 * sd, high: mean + 3 * sd },
      meanMovingRange,
      movingRangeLimit: meanMovingRange * (1 + (3 * D3) / D2),
    },
  };
}
