import type { Result } from '../result.ts';
import { type OneClass, type OutcomeTable, whyOneClass } from './outcomeTable.ts';

export interface RocPoint {
  /** A case counts as positive at this value and above; null = nobody does. */
  readonly cutoff: number | null;
  readonly sensitivity: number;
  readonly specificity: number;
}

/**
 * The steps of the ROC curve, from the cut-off that nobody reaches down to the lowest observed value, which everybody reaches.
 * @returns one point more than there are distinct values; sensitivity rises and specificity falls from point to point
 */
export function rocCurve(table: OutcomeTable): Result<readonly RocPoint[], OneClass> {
  const reason = whyOneClass(table);
  if (reason !== undefined) return { ok: false, reason };
  const { values, positives, negatives, nPositive, nNegative } = table;
  const points: RocPoint[] = [{ cutoff: null, sensitivity: 0, specificity: 1 }];
  for (let v = values.length - 1, hits = 0, alarms = 0; v >= 0; v--) {
    hits += positives[v] as number;
    alarms += negatives[v] as number;
    points.push({ cutoff: values[v] as number, sensitivity: hits / nPositive, specificity: (nNegative - alarms) / nNegative });
  }
  return { ok: true, value: points };
}
