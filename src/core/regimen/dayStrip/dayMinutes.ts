import type { DayRhythm } from './types.ts';

export const DAY_MINUTES = 1440;

/** Minutes since getting up, 0 to 1439, whatever the clock says: a day of a night worker is then a day like others. */
export function sinceUp(minute: number, { upMinute }: Pick<DayRhythm, 'upMinute'>): number {
  return (((minute - upMinute) % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES;
}

/** Back to minutes after midnight. */
export const onClock = (since: number, { upMinute }: Pick<DayRhythm, 'upMinute'>): number => (upMinute + since) % DAY_MINUTES;

/** How long the person is up, minutes, 1 to 1440. Up and bed at one minute: the whole day. */
export const awakeMinutes = (rhythm: Pick<DayRhythm, 'upMinute' | 'bedMinute'>): number => sinceUp(rhythm.bedMinute, rhythm) || DAY_MINUTES;
