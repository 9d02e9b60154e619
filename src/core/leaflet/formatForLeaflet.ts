import { addMonths } from 'date-fns';
import type { Jurisdiction } from '../regimen/types.ts';
import type { LeafletLanguage } from './types.ts';

/** The site as far as the words of a leaflet depend on it. */
export interface LeafletPractice {
  readonly name: string;
  readonly invented: boolean;
  readonly jurisdiction?: Jurisdiction | undefined;
  /** BCP 47, e.g. "en-GB"; only its region is used, the language is the reader's. */
  readonly locale?: string | undefined;
  /** ISO 4217; absent = by jurisdiction, and where that is unknown no cost is printed. */
  readonly currency?: string | undefined;
}

const REGION: Readonly<Record<Jurisdiction, string | undefined>> = { US: 'US', UK: 'GB', unknown: undefined };
const CURRENCY: Readonly<Record<Jurisdiction, string | undefined>> = { US: 'USD', UK: 'GBP', unknown: undefined };

/** The reader's language in the site's region, e.g. "es-US". */
export function leafletLocale(language: LeafletLanguage, practice: LeafletPractice): string {
  const region = practice.locale === undefined ? REGION[practice.jurisdiction ?? 'unknown'] : new Intl.Locale(practice.locale).region;
  return region === undefined ? language : `${language}-${region}`;
}

export function leafletCurrency(practice: LeafletPractice): string | undefined {
  return practice.currency ?? CURRENCY[practice.jurisdiction ?? 'unknown'];
}

/**
 * A local date in words.
 * @param isoDate  "YYYY-MM-DD"
 * @throws RangeError when it is not a date of the calendar
 */
export function formatLeafletDate(isoDate: string, locale: string, parts: 'day' | 'weekday' | 'month'): string {
  const options: Intl.DateTimeFormatOptions =
    parts === 'month'
      ? { month: 'long', year: 'numeric' }
      : { day: 'numeric', month: 'long', year: 'numeric', ...(parts === 'weekday' && { weekday: 'long' }) };
  return new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC' }).format(toUtcNoon(isoDate));
}

/** "YYYY-MM-DD" that many calendar months later; the last day of a shorter month where the day does not exist. */
export function addMonthsToDate(isoDate: string, months: number): string {
  const noon = toUtcNoon(isoDate);
  // date-fns counts in the machine's zone: build the date there, so that no zone can move it to another day.
  const local = addMonths(new Date(noon.getUTCFullYear(), noon.getUTCMonth(), noon.getUTCDate(), 12), months);
  const pad = (n: number) => String(n).padStart(2, '0');
  return `${local.getFullYear()}-${pad(local.getMonth() + 1)}-${pad(local.getDate())}`;
}

function toUtcNoon(isoDate: string): Date {
  const date = new Date(`${isoDate}T12:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(isoDate) || Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== isoDate) {
    throw new RangeError(`not a local date YYYY-MM-DD: ${isoDate}`);
  }
  return date;
}

/** Integer cents of the currency, in the site's way of writing money. */
export function formatMoney(cents: number, currency: string, locale: string): string {
  return new Intl.NumberFormat(locale, { style: 'currency', currency, currencyDisplay: 'narrowSymbol' }).format(cents / 100);
}

/**
 * Puts values into `{name}` places.
 * @throws RangeError for a place without a value, so that no brace is ever printed
 */
export function fillIn(template: string, values: Readonly<Record<string, string | number>>): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => {
    const value = values[name];
    if (value === undefined) throw new RangeError(`no value for {${name}} in: ${template}`);
    return String(value);
  });
}

export function capitaliseFirst(text: string, locale: string): string {
  const [first = ''] = text;
  return first.toLocaleUpperCase(locale) + text.slice(first.length);
}

/** For the middle of a sentence: "Xylitol gum" becomes "xylitol gum"; an abbreviation keeps its capitals. */
export function lowerFirst(text: string, locale: string): string {
  const [first = '', second = ''] = text;
  return second !== second.toLocaleLowerCase(locale) ? text : first.toLocaleLowerCase(locale) + text.slice(first.length);
}
