import { DAY_MINUTES, nightSpans } from '../../../core/plaque/day/nightSpans.ts';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';

/** Where a drag comes to rest, and the step of a key, minutes. */
export const STEP_MINUTES = 5;
export const LARGE_STEP_MINUTES = 30;
const LEAST_MINUTES = 1;

type Towards = 'earlier' | 'later' | 'nearest';

/** Minutes in which this event may not begin, since something else is there or the person sleeps: open intervals. */
function listBlocked(day: AcidDay, event: DayEvent): readonly { readonly from: number; readonly to: number }[] {
  const others = isSipped(event) ? [] : day.events.filter((other) => other.id !== event.id && !isSipped(other));
  const taken = others.map((other) => ({ from: other.startMinute, to: other.startMinute + other.minutes }));
  const asleep = event.kind === 'eating' || event.kind === 'water' ? [] : nightSpans(day);
  return [...taken, ...asleep].map(({ from, to }) => ({ from: from - event.minutes, to }));
}

const isSipped = (event: DayEvent): boolean => event.kind === 'eating' && event.sipped === true;

/**
 * The start nearest to the wanted one at which the event has room. Two things cannot be done at once, so what is moved onto something else
 * comes to rest beside it, or beyond it in the direction of the key.
 * @returns undefined where the day has no room for it
 */
export function findFreeStart(day: AcidDay, event: DayEvent, wanted: number, towards: Towards = 'nearest'): number | undefined {
  const blocked = listBlocked(day, event);
  const last = Math.min(DAY_MINUTES - event.minutes, DAY_MINUTES - 1);
  const within = Math.min(Math.max(wanted, 0), last);
  const mayBegin = (minute: number) => minute >= 0 && minute <= last && !blocked.some(({ from, to }) => minute > from && minute < to);
  const isTowards = (minute: number) => towards === 'nearest' || (towards === 'later' ? minute >= within : minute <= within);
  const places = [within, ...blocked.flatMap(({ from, to }) => [from, to])].filter((minute) => mayBegin(minute) && isTowards(minute));
  return places.sort((a, b) => Math.abs(a - within) - Math.abs(b - within))[0];
}

/** The day with this event begun at another time; the same day where nothing moves. */
export function moveEvent(day: AcidDay, id: string, wanted: number, towards: Towards = 'nearest'): AcidDay {
  const event = findEvent(day, id);
  const startMinute = event && findFreeStart(day, event, wanted, towards);
  if (!event || startMinute === undefined || startMinute === event.startMinute) return day;
  return withEvent(day, { ...event, startMinute });
}

/** One key: earlier or later by a step, over whatever stands in the way. */
export function stepEvent(day: AcidDay, id: string, byMinutes: number): AcidDay {
  const event = findEvent(day, id);
  return event ? moveEvent(day, id, event.startMinute + byMinutes, byMinutes > 0 ? 'later' : 'earlier') : day;
}

/** One key: longer or shorter, one minute at a time up to ten, then five. It stays shorter than what would run into the next thing. */
export function lengthenEvent(day: AcidDay, id: string, direction: 1 | -1): AcidDay {
  const event = findEvent(day, id);
  if (!event) return day;
  const by = event.minutes + Math.min(direction, 0) >= 10 ? STEP_MINUTES : 1;
  const minutes = Math.max(LEAST_MINUTES, Math.round(event.minutes) + direction * by);
  const longer = { ...event, minutes };
  return findFreeStart(day, longer, event.startMinute) === event.startMinute ? withEvent(day, longer) : day;
}

export const removeEvent = (day: AcidDay, id: string): AcidDay => ({ ...day, events: day.events.filter((event) => event.id !== id) });

/** The day with a new event as near to its time as there is room; undefined where there is none. */
export function addEvent(day: AcidDay, event: DayEvent): AcidDay | undefined {
  const startMinute = findFreeStart(day, event, event.startMinute);
  return startMinute === undefined ? undefined : inOrder({ ...day, events: [...day.events, { ...event, startMinute }] });
}

export const findEvent = (day: AcidDay, id: string): DayEvent | undefined => day.events.find((event) => event.id === id);

/** One event in the place of the one with its id. The order of the list stays: a mark that is being dragged must not change its place. */
export const withEvent = (day: AcidDay, event: DayEvent): AcidDay => ({
  ...day,
  events: day.events.map((other) => (other.id === event.id ? event : other)),
});

/** The day as it is saved: its events in the order of time. */
export const inOrder = (day: AcidDay): AcidDay => ({ ...day, events: [...day.events].sort((a, b) => a.startMinute - b.startMinute) });

/** A name for an event that none of the day has yet. */
export function freshId(day: AcidDay): string {
  const numbers = day.events.map(({ id }) => Number(/^e(\d+)$/.exec(id)?.[1] ?? 0));
  return `e${Math.max(0, ...numbers) + 1}`;
}
