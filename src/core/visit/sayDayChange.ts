import { type Interval, intervalOf } from '../plaque/day/dayBand.ts';
import { dayWords } from '../plaque/day/dayWords.ts';
import { type RestBand, whenNearLine } from '../plaque/day/restDay.ts';
import { sayAtLeast, sayMinutesRange, sayRoughly } from '../plaque/day/sayDay.ts';

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

/** What the draws of the model say of one day: minutes on the acid side, and how the plaque stands with nothing eaten. */
export interface DayRange {
  readonly band: Interval;
  readonly atRest: RestBand;
}

/**
 * The changed day beside the one that was told: minutes only where the band of the difference is all on one side. Where plaque lies near the
 * line by itself both are told by what eating adds, as the headline of the day does.
 */
export function sayDayChange(told: DayRange, changed: DayRange, { fewer, more }: DayDifference): string {
  const near = [told, changed].map(({ atRest }) => whenNearLine(atRest)).filter((when) => when !== null);
  const both = near.length === 0 ? sayInAll(told, changed) : sayAdded(told, changed);
  return [
    near.length > 0 && dayWords.en.nearLine[near.includes('day-and-night') ? 'day-and-night' : 'night'],
    `${both}${sayDifference({ fewer, more })}`,
    near.length > 0 && [told, changed].some(isAtLeast) && 'How much more it adds, the model cannot tell.',
  ]
    .filter(Boolean)
    .join(' ');
}

const sayInAll = (told: DayRange, changed: DayRange): string =>
  `In the model, ${sayRoughly(told.band, 'en')} a day on the acid side as told, ${sayMinutesRange(changed.band)} with the change`;

const sayAdded = (told: DayRange, changed: DayRange): string =>
  `What is eaten and drunk adds ${sayAmount(told)} a day on the acid side as told, ${sayAmount(changed)} with the change`;

const isAtLeast = ({ atRest }: DayRange): boolean => sayAtLeast(atRest.addedByFood, 'en') !== undefined;

function sayAmount({ atRest: { addedByFood } }: DayRange): string {
  const least = sayAtLeast(addedByFood, 'en');
  return least ? `at least ${least}` : sayRoughly(addedByFood, 'en');
}

function sayDifference({ fewer, more }: DayDifference): string {
  if (fewer) return `: ${sayMinutesRange(fewer)} less.`;
  return more ? `: ${sayMinutesRange(more)} more.` : '. The model cannot tell a difference.';
}
