import type { AcidDay } from '../plaque/day/types.ts';
import type { DescribedDays } from './describedDays.ts';

/** "06:40" from minutes after midnight. */
export function sayMinute(minute: number): string {
  const whole = Math.floor(minute);
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`;
}

/** What was told, in one line without a figure of the model: "eating or drinking 8 times, 5 of them between meals; awake from 06:40 to 23:00". */
export function sayDescribedDays({ days, changed }: DescribedDays): string {
  const told = days.map((day, i) => (days.length === 1 ? sayDay(day) : `${day.label ?? `day ${i + 1}`}: ${sayDay(day)}`));
  return [...told, ...(changed ? ['a change was tried'] : [])].join('; ');
}

function sayDay({ events, wakeMinute, sleepMinute }: AcidDay): string {
  const eating = events.filter((event) => event.kind === 'eating');
  const between = eating.filter(({ occasion }) => occasion === 'between-meals').length;
  const times = eating.length === 1 ? 'once' : `${eating.length} times`;
  const ofThem = eating.length === 0 ? '' : `, ${between === 0 ? 'none' : between} of them between meals`;
  return `eating or drinking ${times}${ofThem}; awake from ${sayMinute(wakeMinute)} to ${sayMinute(sleepMinute)}`;
}
