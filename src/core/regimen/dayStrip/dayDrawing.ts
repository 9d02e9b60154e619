import { DAY_MINUTES } from './dayMinutes.ts';
import type { DayRhythm, DayStrip, EatingTime } from './types.ts';

/** A stretch of the clock, minutes after midnight, `from` below `to`. */
export interface ClockSpan {
  readonly from: number;
  readonly to: number;
}

/** What is used at one minute of the clock. */
export interface DrawnUse {
  readonly minute: number;
  readonly shelfItemIds: readonly string[];
}

/** A day of uses on the clock, from midnight to midnight: what runs over midnight is cut there. */
export interface DayDrawing {
  readonly night: readonly ClockSpan[];
  readonly away: readonly ClockSpan[];
  /** Nothing by mouth, after which item. */
  readonly waits: readonly (ClockSpan & { readonly shelfItemId: string })[];
  readonly eaten: readonly (ClockSpan & { readonly eating: EatingTime })[];
  /** In the order of the clock; what is used at one minute stands together. */
  readonly uses: readonly DrawnUse[];
}

/** The times were checked when the uses were placed. */
export function dayDrawing({ rhythm, placed }: DayStrip): DayDrawing {
  const minutes = [...new Set(placed.map(({ minute }) => minute))].sort((a, b) => a - b);
  return {
    night: isAlwaysUp(rhythm) ? [] : cutAtMidnight(rhythm.bedMinute, rhythm.upMinute),
    away: rhythm.away ? cutAtMidnight(rhythm.away.fromMinute, rhythm.away.toMinute) : [],
    waits: placed.flatMap(({ shelfItemId, minute, nothingUntil }) =>
      nothingUntil === null ? [] : cutAtMidnight(minute, nothingUntil).map((span) => ({ ...span, shelfItemId })),
    ),
    eaten: rhythm.eating.flatMap((eating) =>
      cutAtMidnight(eating.startMinute, eating.startMinute + eating.minutes).map((span) => ({ ...span, eating })),
    ),
    uses: minutes.map((minute) => ({
      minute,
      shelfItemIds: placed.filter((use) => use.minute === minute).map(({ shelfItemId }) => shelfItemId),
    })),
  };
}

const isAlwaysUp = ({ upMinute, bedMinute }: DayRhythm): boolean => upMinute === bedMinute;

/** @param to  may lie past midnight, or be smaller than `from` */
function cutAtMidnight(from: number, to: number): readonly ClockSpan[] {
  const end = to < from ? to + DAY_MINUTES : to;
  if (end <= DAY_MINUTES) return [{ from, to: end }];
  return [
    { from, to: DAY_MINUTES },
    { from: 0, to: end - DAY_MINUTES },
  ];
}
