// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import type { DayCurve } from '../types.ts';
import type { Interval } from './dayBand.ts';
import { nightSpans } from './nightSpans.ts';
import type { AcidDay } from './types.ts';

/** Her resting day: the same hours and care, with nothing eaten or drunk. */
export const restDay = (day: AcidDay): AcidDay => ({ ...day, events: day.events.filter(({ kind }) => kind !== 'eating') });

/** How the resting day stands to the acid side, over the draws of the model. */
export interface RestBand {
  /** Minutes on the acid side with nothing eaten. */
  readonly minutes: Interval;
  /** Of these, while she is awake. */
  readonly awakeMinutes: Interval;
  /** What eating and drinking add to them, each draw against itself. */
  readonly addedByFood: Interval;
}

/** From here on plaque lies near the line by itself, and hours in all say little about what is eaten. */
const NEAR_LINE_MINUTES = 60;

/** `null` where the resting plaque keeps away from the line, as nearly all draws see it; else when it lies near. */
export function whenNearLine({ minutes, awakeMinutes }: RestBand): 'night' | 'day-and-night' | null {
  if (minutes.high < NEAR_LINE_MINUTES) return null;
  return awakeMinutes.high < NEAR_LINE_MINUTES ? 'night' : 'day-and-night';
}

/** Whole minutes of the time awake at whose middle the curve is below a line. */
export function awakeMinutesBelow({ ph }: Pick<DayCurve, 'ph'>, day: AcidDay, linePh: number): number {
  const nights = nightSpans(day);
  let count = 0;
  for (let minute = 0; minute < ph.length - 1; minute += 1) {
    const isAsleep = nights.some(({ from, to }) => minute >= from && minute < to);
    if (!isAsleep && (ph[minute]! + ph[minute + 1]!) / 2 < linePh) count += 1;
  }
  return count;
}
