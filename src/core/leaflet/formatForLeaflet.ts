import { keepByKey } from '../keep/keepByKey.ts';
import type { Jurisdiction } from '../regimen/types.ts';
import { parseDate } from '../visit/calendar.ts';
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

const REGION: Readonly<Partial<Record<Jurisdiction, string>>> = { US: 'US', UK: 'GB' };
// Not every member state of the EU pays in euros, so none is guessed.
const CURRENCY: Readonly<Partial<Record<Jurisdiction, string>>> = { US: 'USD', UK: 'GBP' };

/** The digits of packs, measuring cups and clocks, in every language: a dose must look on the page as it looks on the pack. */
const DIGITS = 'latn';

/** The reader's language in the site's region, e.g. "es-US"; Arabic with the digits 0 to 9 whatever the region ("ar-US-u-nu-latn"). */
export function leafletLocale(language: LeafletLanguage, practice: LeafletPractice): string {
  const region = practice.locale === undefined ? REGION[practice.jurisdiction ?? 'unknown'] : new Intl.Locale(practice.locale).region;
  const place = region === undefined ? language : `${language}-${region}`;
  return language === 'ar' ? `${place}-u-nu-${DIGITS}` : place;
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
  return DATE_FORMATS[parts](locale).format(toUtcNoon(isoDate));
}

// Building a format costs a hundred times as much as using it.
const dateFormats = (options: Intl.DateTimeFormatOptions) =>
  keepByKey(
    (locale: string) => new Intl.DateTimeFormat(locale, { ...options, timeZone: 'UTC', calendar: 'gregory', numberingSystem: DIGITS }),
  );
const DATE_FORMATS = {
  day: dateFormats({ day: 'numeric', month: 'long', year: 'numeric' }),
  weekday: dateFormats({ weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' }),
  month: dateFormats({ month: 'long', year: 'numeric' }),
};

function toUtcNoon(isoDate: string): Date {
  if (!parseDate(isoDate)) throw new RangeError(`not a local date YYYY-MM-DD: ${isoDate}`);
  return new Date(`${isoDate}T12:00:00Z`);
}

/** Minutes after midnight as the site writes times: "07:10", "7:10 AM"; in Arabic without the words for the half of the day. */
export function formatClock(minute: number, locale: string): string {
  return clockFormats(locale)
    .format(new Date(Date.UTC(2026, 0, 1, 0, minute)))
    .replace(DIRECTION_MARKS, '')
    .replaceAll('\u202f', '\u00a0');
}

const clockFormats = keepByKey(
  (locale: string) =>
    new Intl.DateTimeFormat(locale, {
      timeStyle: 'short',
      timeZone: 'UTC',
      numberingSystem: DIGITS,
      ...(isArabic(locale) && { hourCycle: 'h23' as const }),
    }),
);

/** Integer cents of the currency, in the site's way of writing money. */
export function formatMoney(cents: number, currency: string, locale: string): string {
  return moneyFormats(locale)(currency)
    .format(cents / 100)
    .replace(DIRECTION_MARKS, '');
}

/** The page itself says which way it is written; these invisible signs have no place in a typeface. */
const DIRECTION_MARKS = /[\u200e\u200f\u061c]/g;

/** Arabic writes out the name of the currency: its short signs differ from place to place and stand on either side. */
const isArabic = (locale: string) => locale.startsWith('ar');

const moneyFormats = keepByKey((locale: string) =>
  keepByKey(
    (currency: string) =>
      new Intl.NumberFormat(locale, {
        style: 'currency',
        currency,
        currencyDisplay: isArabic(locale) ? 'name' : 'narrowSymbol',
        numberingSystem: DIGITS,
      }),
  ),
);

const numberFormats = keepByKey((locale: string) => new Intl.NumberFormat(locale, { maximumFractionDigits: 1, numberingSystem: DIGITS }));

/** At most one decimal, in the site's way of writing numbers. */
export function formatNumber(value: number, locale: string): string {
  return numberFormats(locale).format(value);
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
