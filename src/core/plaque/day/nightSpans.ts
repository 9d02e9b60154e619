import type { AcidDay } from './types.ts';

export const DAY_MINUTES = 1440;

/** A stretch of the day, minutes after midnight. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** When she sleeps at night, cut at midnight: one or two stretches in the order of the day. */
export function nightSpans({ wakeMinute, sleepMinute }: Pick<AcidDay, 'wakeMinute' | 'sleepMinute'>): readonly Span[] {
  if (sleepMinute < wakeMinute) return [{ from: sleepMinute, to: wakeMinute }];
  const spans = [
    { from: 0, to: wakeMinute },
    { from: sleepMinute, to: DAY_MINUTES },
  ];
  return spans.filter(({ from, to }) => to > from);
}
