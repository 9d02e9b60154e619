import { type Interval, requireLevel } from '../interval.ts';
import { quantileType7 } from '../quantileType7.ts';
import type { Result } from '../result.ts';
import { type OneClass, type OutcomeTable, whyOneClass } from './outcomeTable.ts';

export interface BootstrapYouden {
  readonly resamples: number;
  /** Percentiles of the cut-offs of the resamples. */
  readonly cutoffInterval: Interval;
  readonly medianCutoff: number;
  /**
   * By how much, on average, the index of a cut-off is higher on the cases that chose it than on those it was drawn from (Efron).
   * The index to expect on new cases is the seen one less this.
   */
  readonly optimism: number;
}

export interface BootstrapOptions {
  /** Uniform numbers, 0 up to but not including 1. */
  readonly random: () => number;
  /** Default 2,000. */
  readonly resamples?: number | undefined;
  /** Default 0.95. */
  readonly level?: number | undefined;
}

/**
 * Percentile interval of the Youden cut-off by the stratified bootstrap: cases with the outcome and cases without are drawn apart.
 * The cases are sorted once. A resample is a count for each distinct value, so its curve is one pass over the table and nothing is
 * sorted again. A cut-off of a resample is a value that it holds, the lowest if several tie.
 * @returns `no-positives`, `no-negatives`; with few cases the interval is honest only in being wide
 * @throws RangeError for a number of resamples under 1 or a level outside (0, 1)
 * @accuracy each resample equals drawing, sorting and searching anew; limits within 10 % of R 4.2.2, both being random
 * @source efronTibshirani1993
 */
export function bootstrapYouden(
  table: OutcomeTable,
  { random, resamples = 2000, level = 0.95 }: BootstrapOptions,
): Result<BootstrapYouden, OneClass> {
  requireLevel(level);
  if (!(Number.isSafeInteger(resamples) && resamples >= 1)) throw new RangeError(`resamples must be 1 or more: ${resamples}`);
  const reason = whyOneClass(table);
  if (reason !== undefined) return { ok: false, reason };
  const { values, nPositive, nNegative } = table;
  const scores = scoreByPlace(table);
  const [fromPositives, fromNegatives] = [placesOf(table.positives, nPositive), placesOf(table.negatives, nNegative)];
  const [hits, alarms] = [new Uint32Array(values.length), new Uint32Array(values.length)];
  const cutoffs = new Float64Array(resamples);
  let optimism = 0;
  for (let r = 0; r < resamples; r++) {
    draw(fromPositives, hits, random);
    draw(fromNegatives, alarms, random);
    const best = takeBest(hits, alarms, nPositive, nNegative);
    cutoffs[r] = values[best.place] as number;
    optimism += best.score - (scores[best.place] as number);
  }
  cutoffs.sort();
  const end = (1 - level) / 2;
  return {
    ok: true,
    value: {
      resamples,
      cutoffInterval: { low: quantileType7(cutoffs, end), high: quantileType7(cutoffs, 1 - end) },
      medianCutoff: quantileType7(cutoffs, 0.5),
      optimism: optimism / resamples / (nPositive * nNegative),
    },
  };
}

/** Youden index of each value as cut-off, times both group sizes: a whole number. */
function scoreByPlace({ positives, negatives, nPositive, nNegative }: OutcomeTable): Float64Array {
  const scores = new Float64Array(positives.length);
  let score = 0;
  for (let v = positives.length - 1; v >= 0; v--) {
    score += (positives[v] as number) * nNegative - (negatives[v] as number) * nPositive;
    scores[v] = score;
  }
  return scores;
}

/** For each case of a group the place of its value. */
function placesOf(counts: Uint32Array, total: number): Uint32Array {
  const places = new Uint32Array(total);
  let at = 0;
  for (let v = 0; v < counts.length; v++) {
    places.fill(v, at, at + (counts[v] as number));
    at += counts[v] as number;
  }
  return places;
}

function draw(from: Uint32Array, into: Uint32Array, random: () => number): void {
  const size = from.length;
  for (let i = 0; i < size; i++) {
    const place = from[Math.floor(random() * size)] as number;
    into[place] = (into[place] as number) + 1;
  }
}

/** The best cut-off of a resample. Leaves the counts at 0 for the next one. */
function takeBest(hits: Uint32Array, alarms: Uint32Array, nPositive: number, nNegative: number): { place: number; score: number } {
  let [score, bestScore, bestPlace] = [0, Number.NEGATIVE_INFINITY, 0];
  for (let v = hits.length - 1; v >= 0; v--) {
    const [hit, alarm] = [hits[v] as number, alarms[v] as number];
    if (hit === 0 && alarm === 0) continue;
    hits[v] = 0;
    alarms[v] = 0;
    score += hit * nNegative - alarm * nPositive;
    if (score >= bestScore) {
      bestScore = score;
      bestPlace = v;
    }
  }
  return { place: bestPlace, score: bestScore };
}
