import { noiseOfMeter } from './blendNoise.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import type { MeterAndNoise } from './compareWithPast.ts';
import { interpretLogReading, type ReadingInterpretation } from './interpretReading.ts';
import { readingSdLog } from './noiseSums.ts';
import type { Bound, Meter, ReadingAssessment } from './types.ts';

export type Verdict = NonNullable<ReadingAssessment['verdict']>;

/** What a stored assessment said of a number that counted. */
export interface StoredVerdict {
  readonly rlu: number;
  readonly bound: Bound;
  /** null = a number at the meter's limit, too near the cut-off to call. */
  readonly verdict: Verdict | null;
  readonly probabilityAbove: number | null;
}

interface Told {
  readonly verdict: Verdict | null;
  readonly probabilityAbove: number | null;
}

export interface RecomputedReading {
  /** As it was told and stays on the record. */
  readonly told: Told;
  readonly today: Told;
  /** null where the verdict is the same. */
  readonly sentence: string | null;
}

/** What is to be kept of a stored assessment; undefined where there was no number that counted. */
export function storedVerdictOf({ counted, rlu, bound, verdict, probabilityAbove }: ReadingAssessment): StoredVerdict | undefined {
  if (!counted || rlu === undefined) return undefined;
  return { rlu, bound: bound ?? 'exact', verdict: verdict ?? null, probabilityAbove: probabilityAbove ?? null };
}

/**
 * An old reading as it was told, and with what is known of the meter's noise today. The stored verdict is never replaced: both are given,
 * with a sentence where they differ, which says whether studies reported since then are the reason.
 * @param onDate  ISO local date of the reading's visit: studies reported later were not known then
 */
export function recomputeReading(stored: StoredVerdict, { meter, table }: MeterAndNoise, onDate: string): RecomputedReading {
  const told = { verdict: stored.verdict, probabilityAbove: stored.probabilityAbove };
  const today = tell(stored, { meter, table });
  if (today.verdict === told.verdict) return { told, today, sentence: null };
  const knownThen: Meter = { ...meter, own: (meter.own ?? []).filter(({ reportedOn }) => reportedOn <= onDate) };
  const isOwnNoise = tell(stored, { meter: knownThen, table }).verdict === told.verdict;
  const since = isOwnNoise ? "With this practice's own noise, measured since" : 'With the meter as it is described today';
  return { told, today, sentence: `Then: ${sayVerdictWord(told.verdict)}. ${since}: ${sayVerdictWord(today.verdict)}.` };
}

function tell({ rlu, bound }: StoredVerdict, { meter, table }: MeterAndNoise): Told {
  const read: ReadingInterpretation = interpretLogReading({
    readingRlu: rlu,
    bound: boundOnMeter(rlu, bound, meter),
    cutoffRlu: meter.cutoffRlu,
    sdLogSingle: readingSdLog(noiseOfMeter(table, meter)),
  });
  return { verdict: read.verdict, probabilityAbove: read.probabilityAbove };
}

/** "above the cut-off" */
export function sayVerdictWord(verdict: Verdict | null): string {
  if (verdict === null) return "at the meter's limit, open";
  return verdict === 'too-close' ? 'too close to call' : `${verdict} the cut-off`;
}
