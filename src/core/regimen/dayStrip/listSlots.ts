import { awakeMinutes, sinceUp } from './dayMinutes.ts';
import type { DayRhythm, StripTimes, TimedUse } from './types.ts';

/** A time at which an item could be used. `since` counts from getting up; less cost is better. */
export interface Slot {
  readonly since: number;
  readonly cost: number;
  readonly after?: string | undefined;
}

/** Wide enough steps keep the search small; nobody lives by five minutes. */
const STEP_MINUTES = 15;
const BRUSHING_MINUTES = 5;
/** Last thing at night, and soon after getting up: minutes before bed and after up. */
const BEFORE_BED = BRUSHING_MINUTES;
const AFTER_UP = 10;
/** A time after eating that makes no acid is worth less than one that does, never nothing. */
const LEAST_WEIGHT = 1;

/**
 * Times at which one item could be used in a day, best first: awake, not while eating, at home unless it can be taken along, and with its
 * wait free of eating. What one item does to another is not looked at here.
 */
export function listSlots(use: TimedUse, rhythm: DayRhythm, times: StripTimes): readonly Slot[] {
  const awake = awakeMinutes(rhythm);
  return wishes(use, rhythm, times)
    .filter(({ since }) => since >= 0 && since <= awake)
    .filter(({ since }) => use.isPortable || !isAway(since, rhythm))
    .filter(({ since }) => isFreeOfEating(since, use.waitMinutes, rhythm))
    .sort((a, b) => a.cost - b.cost || a.since - b.since);
}

function wishes(use: TimedUse, rhythm: DayRhythm, times: StripTimes): readonly Slot[] {
  switch (use.rhythm) {
    case 'brushing':
      return brushingSlots(rhythm);
    case 'after-meals':
      return afterEatingSlots(rhythm, times);
    default:
      return spreadSlots(rhythm);
  }
}

/** Before bed first, then soon after getting up or after the first meal, then after the other meals. */
function brushingSlots(rhythm: DayRhythm): readonly Slot[] {
  const awake = awakeMinutes(rhythm);
  const ends = endsOfEating(rhythm);
  const last = awake - BEFORE_BED;
  const grid = spreadSlots(rhythm).map(({ since }) => ({ since, cost: 100 + Math.min(since, awake - since) / awake }));
  return [
    { since: last, cost: 0 },
    { since: AFTER_UP, cost: 1 },
    ...ends.map(({ since, name }, i) => ({ since: since + BRUSHING_MINUTES, cost: i === 0 ? 2 : 10 + i, after: name })),
    ...grid,
  ];
}

/** The latest recommended minute after each time of eating, that which makes most acid first; failing that a time far from all of them. */
function afterEatingSlots(rhythm: DayRhythm, { afterEating }: StripTimes): readonly Slot[] {
  const eating = endsOfEating(rhythm);
  const most = Math.max(LEAST_WEIGHT, ...eating.map((e) => e.weight));
  const wished = [afterEating.earliest, afterEating.latest].flatMap((delay, i) =>
    eating.map(({ since, weight, name }) => ({ since: since + delay, cost: 10 * (1 - weight / most) + i / 10, after: name })),
  );
  return [...wished, ...farFromEating(eating, awakeMinutes(rhythm))];
}

/** Any time, the middle of the longest stretch between meals, getting up and bed first. */
function farFromEating(eating: readonly { readonly since: number }[], awake: number): readonly Slot[] {
  const marks = [0, awake, ...eating.map((e) => e.since)];
  const nearest = (since: number) => Math.min(...marks.map((mark) => Math.abs(mark - since)));
  return quarters(awake).map((since) => ({ since, cost: 20 + 1 - nearest(since) / awake }));
}

/** Every quarter of an hour, all alike. */
const spreadSlots = (rhythm: DayRhythm): readonly Slot[] => quarters(awakeMinutes(rhythm)).map((since) => ({ since, cost: 0 }));

const quarters = (awake: number): readonly number[] =>
  Array.from({ length: Math.floor(awake / STEP_MINUTES) + 1 }, (_, i) => i * STEP_MINUTES);

function endsOfEating(rhythm: DayRhythm): readonly { readonly since: number; readonly weight: number; readonly name: string }[] {
  return rhythm.eating
    .map(({ startMinute, minutes, acidMinutes, name }) => ({
      since: sinceUp(startMinute, rhythm) + minutes,
      weight: Math.max(LEAST_WEIGHT, acidMinutes ?? LEAST_WEIGHT),
      name,
    }))
    .sort((a, b) => a.since - b.since);
}

function isAway(since: number, rhythm: DayRhythm): boolean {
  if (!rhythm.away) return false;
  const from = sinceUp(rhythm.away.fromMinute, rhythm);
  const length = sinceUp(rhythm.away.toMinute - rhythm.away.fromMinute + rhythm.upMinute, rhythm);
  return since >= from && since < from + length;
}

/** Not while eating, and nothing to eat within the wait. */
function isFreeOfEating(since: number, waitMinutes: number, rhythm: DayRhythm): boolean {
  return rhythm.eating.every(({ startMinute, minutes }) => {
    const from = sinceUp(startMinute, rhythm);
    return since >= from + minutes || since + waitMinutes <= from;
  });
}
