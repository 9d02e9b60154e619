import { requirePositive } from '../reading/requirePositive.ts';
import type { Interval } from '../stats/interval.ts';
import type { Result } from '../stats/result.ts';
import { type ComparePairsInput, comparePairs, type NoComparison, type PairComparison } from './comparePairs.ts';

export interface LotComparison extends PairComparison {
  /** What a swab of the new lot is expected to read where one of the old lot reads the cut-off, with its 95 % interval. */
  readonly atCutoffRlu: Interval & { readonly estimate: number };
}

/**
 * A new lot of swabs against the one in use, on the same meter and the same solutions, before the new lot is used on people.
 * @param input       see `comparePairs`
 * @param cutoffRlu   the meter's cut-off, above 0
 * @returns reasons as in `comparePairs`
 * @throws RangeError naming the field
 * @source project
 */
export function compareLots(input: ComparePairsInput, cutoffRlu: number): Result<LotComparison, NoComparison> {
  requirePositive(cutoffRlu, 'cutoffRlu');
  const comparison = comparePairs(input);
  if (!comparison.ok) return comparison;
  const { estimate, low, high } = comparison.value.ratio;
  const atCutoffRlu = { estimate: cutoffRlu * estimate, low: cutoffRlu * low, high: cutoffRlu * high };
  return { ok: true, value: { ...comparison.value, atCutoffRlu } };
}
