import type { Bound, Meter } from './types.ts';

/**
 * A number at the meter's limit is a bound, never a measurement: at or below the lowest reading "at most", at or above the highest
 * "at least". A bound that was noted is kept.
 */
export function boundOnMeter(rlu: number, noted: Bound | undefined, meter: Meter | undefined): Bound {
  if (noted !== undefined && noted !== 'exact') return noted;
  if (meter !== undefined && rlu <= meter.lowestRlu) return 'at-most';
  if (meter !== undefined && rlu >= meter.highestRlu) return 'at-least';
  return 'exact';
}
