import type { Result } from '../result.ts';
import { type OneClass, type OutcomeTable, whyOneClass } from './outcomeTable.ts';

export interface YoudenCutoff {
  /** Observed value with the largest index; the lowest if several share it. A case counts as positive at this value and above. */
  readonly cutoff: number;
  /** All that share the largest index, ascending. */
  readonly tied: readonly number[];
  /** sensitivity + specificity - 1 at the cut-off, 0..1. Too good for cases not seen: the cut-off was chosen on these. */
  readonly index: number;
  readonly sensitivity: number;
  readonly specificity: number;
}

/**
 * The cut-off with the largest Youden index. It weighs a missed case and a false alarm alike, whatever they cost.
 * Compared in whole numbers, so that two cut-offs tie when they do and not when rounding says so.
 * @source youden1950
 */
export function youdenCutoff(table: OutcomeTable): Result<YoudenCutoff, OneClass> {
  const reason = whyOneClass(table);
  if (reason !== undefined) return { ok: false, reason };
  const { values, positives, negatives, nPositive, nNegative } = table;
  let best = { score: Number.NEGATIVE_INFINITY, hits: 0, alarms: 0 };
  let tied: number[] = [];
  for (let v = values.length - 1, hits = 0, alarms = 0; v >= 0; v--) {
    hits += positives[v] as number;
    alarms += negatives[v] as number;
    const score = hits * nNegative - alarms * nPositive;
    if (score < best.score) continue;
    if (score > best.score) tied = [];
    best = { score, hits, alarms };
    tied.push(values[v] as number);
  }
  tied.reverse();
  return {
    ok: true,
    value: {
      cutoff: tied[0] as number,
      tied,
      index: best.score / (nPositive * nNegative),
      sensitivity: best.hits / nPositive,
      specificity: (nNegative - best.alarms) / nNegative,
    },
  };
}
