import { awakeMinutes, sinceUp } from '../regimen/dayStrip/dayMinutes.ts';
import type { DayRhythm, DayStrip, EatingTime } from '../regimen/dayStrip/types.ts';
import { formatClock } from './formatForLeaflet.ts';
import type { Say } from './sayMessage.ts';

/** When one use of an item is, in the words of the page. */
export interface TimeOfUse {
  readonly shelfItemId: string;
  readonly says: string;
  /** In the order of the day. */
  readonly order: number;
}

/** So near to getting up or bed that the page names that and nothing else. */
const NEAR_MINUTES = 30;
/** What is used later than this after a meal comes between it and the next. */
const AFTER_MEAL_MINUTES = 60;

/**
 * The time of each use: on the clock where the day was told; else in words, since the minutes of a usual day are nobody's.
 * @param strip  as its uses were placed
 */
export function timesOfUses({ placed, rhythm }: DayStrip, say: Say, locale: string): readonly TimeOfUse[] {
  return placed.map(({ shelfItemId, minute }) => {
    const order = sinceUp(minute, rhythm);
    return { shelfItemId, order, says: rhythm.basis === 'told' ? formatClock(minute, locale) : sayInWords(order, rhythm, say) };
  });
}

function sayInWords(since: number, rhythm: DayRhythm, say: Say): string {
  const endOf = ({ startMinute, minutes }: EatingTime) => sinceUp(startMinute, rhythm) + minutes;
  const before = rhythm.eating.filter((eating) => endOf(eating) <= since).sort((a, b) => endOf(b) - endOf(a));
  const [latest] = before;
  if (awakeMinutes(rhythm) - since <= NEAR_MINUTES) return say('time.bed');
  if (!latest) return since <= NEAR_MINUTES ? say('time.up') : say('time.between');
  const isLast = before.length === rhythm.eating.length;
  return latest.meal !== undefined && (isLast || since - endOf(latest) <= AFTER_MEAL_MINUTES)
    ? say(`time.after-${latest.meal}`)
    : say('time.between');
}
