import { noiseOfMeter } from './blendNoise.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import { limitsOfDifference } from './changeLimits.ts';
import { changePoint } from './lookPoint.ts';
import { changeParts, type Shared, sumOfParts } from './noiseSums.ts';
import type { NoiseTable } from './noiseTable.ts';
import type { TakenAt } from './parseTakenAt.ts';
import type { Bound, Meter, PastReading, ReadingAssessment } from './types.ts';

export interface DatedPast {
  readonly reading: PastReading;
  readonly at: TakenAt;
}

/** A counted reading as it is compared; hands and lot absent = not known. */
export interface ComparedReading {
  readonly rlu: number;
  readonly bound: Bound;
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
}

/** The meter of the reading, and what is taken of its noise. */
export interface MeterAndNoise {
  readonly meter: Meter;
  readonly table: NoiseTable;
}

export type PastComparison =
  | { readonly kind: 'none' }
  | { readonly kind: 'other-meter' }
  /** One of the two is a bound that leaves the change open. */
  | { readonly kind: 'open'; readonly past: DatedPast }
  | {
      readonly kind: 'compared';
      readonly past: DatedPast;
      readonly change: NonNullable<ReadingAssessment['change']>;
      readonly shared: Shared;
    };

/**
 * A counted reading against the most recent counted one of the same person on the same meter.
 * The noise of the difference holds repeatability and day-to-day variation twice, and hands and lots twice unless they are known to be
 * the same. The limits allow for a look at each visit (`lookPoint`). Bounds are compared by what they leave possible: a rise or fall is
 * said only if the nearest possible values already show it.
 * @param pasts  any order; void readings and later ones are passed over
 */
export function compareWithPast(
  reading: ComparedReading,
  { meter, table }: MeterAndNoise,
  pasts: readonly DatedPast[],
  latestMs: number,
): PastComparison {
  const counted = pasts
    .filter((p) => p.reading.state !== 'void' && p.at.instantMs < latestMs)
    .sort((a, b) => b.at.instantMs - a.at.instantMs);
  const past = counted.find((p) => p.reading.meterId === meter.id);
  if (past === undefined) return { kind: counted.length > 0 ? 'other-meter' : 'none' };

  const shared = whatIsShared(past.reading, reading);
  const limits = limitsOfDifference(sdOfDifference({ meter, table }, shared), changePoint(table));
  const change = atLeastOne(reading.rlu) / atLeastOne(past.reading.rlu) - 1;
  const verdict = change > limits.riseFraction ? 'rise' : change < limits.fallFraction ? 'fall' : 'within-noise';
  const pastBound = boundOnMeter(past.reading.rlu, past.reading.bound, meter);
  if (!isPlain(verdict, pastBound, reading.bound)) return { kind: 'open', past };
  return { kind: 'compared', past, change: { verdict, sincePast: past.reading, ...limits }, shared };
}

/** Of ln second - ln first, where only noise changed. */
const sdOfDifference = ({ meter, table }: MeterAndNoise, shared: Shared): number =>
  Math.sqrt(2 * sumOfParts(noiseOfMeter(table, meter), changeParts(shared)));

const whatIsShared = (a: Pick<ComparedReading, 'operator' | 'lotId'>, b: Pick<ComparedReading, 'operator' | 'lotId'>): Shared => ({
  sameOperator: a.operator !== undefined && a.operator === b.operator,
  sameLot: a.lotId !== undefined && a.lotId === b.lotId,
});

/** A display of 0 means below 1. */
const atLeastOne = (rlu: number): number => Math.max(1, rlu);

/** With a bound, only a change that every possible value shows too: the true ratio may only be further out. */
function isPlain(verdict: 'rise' | 'fall' | 'within-noise', first: Bound, second: Bound): boolean {
  if (first === 'exact' && second === 'exact') return true;
  const ratioOnlyHigher = first !== 'at-least' && second !== 'at-most';
  const ratioOnlyLower = first !== 'at-most' && second !== 'at-least';
  return (verdict === 'rise' && ratioOnlyHigher) || (verdict === 'fall' && ratioOnlyLower);
}
