import { type Interval, intervalOf } from '../plaque/day/dayBand.ts';
import { sayMinutesRange } from '../plaque/day/sayDay.ts';

/** By how much a changed day differs, where all of the band is on one side; both null while some of the draws see no difference. */
export interface DayDifference {
  /** Minutes fewer on the acid side. */
  readonly fewer: Interval | null;
  readonly more: Interval | null;
}

/** @param told, changed  minutes on the acid side by the same draws, one after the other */
export function dayDifference(told: Float64Array, changed: Float64Array): DayDifference {
  const { low, high } = intervalOf(told.map((minutes, i) => minutes - (changed[i] ?? Number.NaN)));
  return { fewer: low > 0 ? { low, high } : null, more: high < 0 ? { low: -high, high: -low } : null };
}

/** The changed day beside the one that was told: minutes only where the band of the difference is all on one side. */
export function sayDayChange(told: Interval, changed: Interval, { fewer, more }: DayDifference): string {
  const both = `In the model, roughly ${sayMinutesRange(told)} a day on the acid side as told, ${sayMinutesRange(changed)} with the change`;
  if (fewer) return `${both}: ${sayMinutesRange(fewer)} less.`;
  if (more) return `${both}: ${sayMinutesRange(more)} more.`;
  return `${both}. The model cannot tell a difference.`;
}
