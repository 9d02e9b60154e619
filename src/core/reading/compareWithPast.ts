import { boundOnMeter } from './boundOnMeter.ts';
import { changeLimits } from './changeLimits.ts';
import { compareReadings } from './compareReadings.ts';
import type { TakenAt } from './parseTakenAt.ts';
import type { Bound, Meter, PastReading, ReadingAssessment } from './types.ts';

export interface DatedPast {
  readonly reading: PastReading;
  readonly at: TakenAt;
}

export type PastComparison =
  | { readonly kind: 'none' }
  | { readonly kind: 'other-meter' }
  /** One of the two is a bound that leaves the change open. */
  | { readonly kind: 'open'; readonly past: DatedPast }
  | { readonly kind: 'compared'; readonly past: DatedPast; readonly change: NonNullable<ReadingAssessment['change']> };

/**
 * A counted reading against the most recent counted one of the same person on the same meter.
 * The limit holds repeatability and day-to-day variation. Bounds are compared by what they leave possible: a rise or fall is said only if
 * the nearest possible values already show it.
 * @param pasts  any order; void readings and later ones are passed over
 */
export function compareWithPast(
  reading: { readonly rlu: number; readonly bound: Bound },
  meter: Meter,
  pasts: readonly DatedPast[],
  latestMs: number,
): PastComparison {
  const counted = pasts
    .filter((p) => p.reading.state !== 'void' && p.at.instantMs < latestMs)
    .sort((a, b) => b.at.instantMs - a.at.instantMs);
  const past = counted.find((p) => p.reading.meterId === meter.id);
  if (past === undefined) return { kind: counted.length > 0 ? 'other-meter' : 'none' };

  const limits = changeLimits({ cvAnalytical: meter.cvAnalytical, cvWithinPerson: meter.cvWithinPerson });
  const { riseFraction, fallFraction } = limits;
  const pastBound = boundOnMeter(past.reading.rlu, past.reading.bound, meter);
  const { verdict } = compareReadings(atLeastOne(past.reading.rlu), atLeastOne(reading.rlu), limits.sdLog);
  if (!isPlain(verdict, pastBound, reading.bound)) return { kind: 'open', past };
  return { kind: 'compared', past, change: { verdict, sincePast: past.reading, riseFraction, fallFraction } };
}

/** A display of 0 means below 1. */
const atLeastOne = (rlu: number): number => Math.max(1, rlu);

/** With a bound, only a change that every possible value shows too: the true ratio may only be further out. */
function isPlain(verdict: 'rise' | 'fall' | 'within-noise', first: Bound, second: Bound): boolean {
  if (first === 'exact' && second === 'exact') return true;
  const ratioOnlyHigher = first !== 'at-least' && second !== 'at-most';
  const ratioOnlyLower = first !== 'at-most' && second !== 'at-least';
  return (verdict === 'rise' && ratioOnlyHigher) || (verdict === 'fall' && ratioOnlyLower);
}
