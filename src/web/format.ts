import type { Jurisdiction } from '../core/regimen/types.ts';

const number = new Intl.NumberFormat('en');
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
const weekday = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
const month = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' });
const shortDay = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', second: '2-digit' });
const shortClock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** 5,150 */
export const formatNumber = (value: number): string => number.format(value);

/** "25 November 2026" from an ISO local date, whatever the zone of this computer. */
export const formatDate = (isoDate: string): string => day.format(new Date(`${isoDate.slice(0, 10)}T00:00:00Z`));

/** "Thursday 26 November 2026" from an ISO local date. */
export const formatDay = (isoDate: string): string => weekday.format(new Date(`${isoDate}T00:00:00Z`)).replace(',', '');

/** "March 2025" from an ISO local date. */
export const formatMonth = (isoDate: string): string => month.format(new Date(`${isoDate.slice(0, 10)}T00:00:00Z`));

/** "26 Nov" */
export const formatShortDay = (isoDate: string): string => shortDay.format(new Date(`${isoDate.slice(0, 10)}T00:00:00Z`));

/** "10:42:07" on this computer's clock. */
export const formatClock = (isoTime: string): string => clock.format(new Date(isoTime));

/** "10:36" on this computer's clock. */
export const formatShortClock = (isoTime: string): string => shortClock.format(new Date(isoTime));

/** "3 to 4 months", "6 months". */
export function formatMonths(from: number, to: number): string {
  return from === to ? `${from} ${from === 1 ? 'month' : 'months'}` : `${from} to ${to} months`;
}

/** Price in the practice's currency units, "12.50". */
export const formatCents = (cents: number): string => (cents / 100).toFixed(2);

const SIGNS: Readonly<Partial<Record<Jurisdiction, string>>> = { UK: '£', US: '$' };

/** "£4.95"; without a sign where the place is not set. */
export const formatMoney = (cents: number, place: Jurisdiction): string => `${SIGNS[place] ?? ''}${formatCents(cents)}`;

/** "1 item", "3 items". */
export const plural = (count: number, one: string, many = `${one}s`): string => `${formatNumber(count)} ${count === 1 ? one : many}`;

/** "low, high and extreme" */
export function joinWords(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The first letter small, but not of an abbreviation. */
export function uncapitalise(text: string): string {
  return /^\p{Lu}\p{Ll}/u.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

export function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A name inside a sentence, set apart so that one written from right to left turns nothing beside it; for texts that are no elements. */
export const isolate = (name: string): string => `\u2068${name}\u2069`;
