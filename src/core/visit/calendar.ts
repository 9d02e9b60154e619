/**
 * Local dates as they are written, "YYYY-MM-DD", without any time zone. They are read by the hundred for each visit, so without a date
 * object in between; ISO dates compare as text.
 */

interface CalendarDate {
  readonly year: number;
  /** 1 to 12 */
  readonly month: number;
  readonly day: number;
}

const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;
const DAYS_IN_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const DAY_MS = 86_400_000;

/** @returns undefined when it is no date of the calendar */
export function parseDate(isoDate: string): CalendarDate | undefined {
  if (!ISO_DATE.test(isoDate)) return undefined;
  const date = { year: twoDigits(isoDate, 0) * 100 + twoDigits(isoDate, 2), month: twoDigits(isoDate, 5), day: twoDigits(isoDate, 8) };
  return date.day >= 1 && date.day <= daysInMonth(date.year, date.month) ? date : undefined;
}

const ZERO = '0'.charCodeAt(0);
const twoDigits = (text: string, at: number): number => (text.charCodeAt(at) - ZERO) * 10 + (text.charCodeAt(at + 1) - ZERO);

/** 0 for a month that does not exist. */
function daysInMonth(year: number, month: number): number {
  const isLeapYear = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month === 2 && isLeapYear ? 29 : (DAYS_IN_MONTH[month - 1] ?? 0);
}

/** @throws RangeError when it is no date of the calendar */
function requireDate(isoDate: string): CalendarDate {
  const date = parseDate(isoDate);
  if (date === undefined) throw new RangeError(`not a local date YYYY-MM-DD: ${isoDate}`);
  return date;
}

/**
 * That many calendar months later; the last day of a shorter month where the day does not exist.
 * @param months  whole number, 0 or more
 * @throws RangeError when it is no date of the calendar
 */
export function addMonthsToDate(isoDate: string, months: number): string {
  const { year, month, day } = requireDate(isoDate);
  const sinceYear0 = year * 12 + (month - 1) + months;
  const [laterYear, laterMonth] = [Math.floor(sinceYear0 / 12), (sinceYear0 % 12) + 1];
  const pad = (n: number, digits: number) => String(n).padStart(digits, '0');
  return `${pad(laterYear, 4)}-${pad(laterMonth, 2)}-${pad(Math.min(day, daysInMonth(laterYear, laterMonth)), 2)}`;
}

/**
 * Whether a date lies after the day that so many calendar months bring (`addMonthsToDate`), without writing that day out.
 * @param months  whole number, 0 or more
 * @throws RangeError when either is no date of the calendar
 */
export function isMoreThanMonthsLater(earlier: string, months: number, later: string): boolean {
  const [from, to] = [requireDate(earlier), requireDate(later)];
  const apart = (to.year - from.year) * 12 + (to.month - from.month);
  // A day that the shorter month lacks cannot be passed in it either, so the days compare as they stand.
  return apart > months || (apart === months && to.day > from.day);
}

/**
 * Whole months from one date to a later one: a month is whole when its day was reached, so from 31 January to 28 February none is.
 * @throws RangeError when either is no date of the calendar
 */
export function wholeMonthsBetween(earlier: string, later: string): number {
  const [from, to] = [requireDate(earlier), requireDate(later)];
  return (to.year - from.year) * 12 + (to.month - from.month) - (to.day < from.day ? 1 : 0);
}

/**
 * Calendar days from one date to another, negative when the second lies before the first.
 * @throws RangeError when either is no date of the calendar
 */
export function daysBetween(from: string, to: string): number {
  requireDate(from);
  requireDate(to);
  return (Date.parse(to) - Date.parse(from)) / DAY_MS;
}

/**
 * That many calendar days later, or earlier with a negative number.
 * @throws RangeError when it is no date of the calendar
 */
export function addDays(isoDate: string, days: number): string {
  requireDate(isoDate);
  return new Date(Date.parse(isoDate) + days * DAY_MS).toISOString().slice(0, 10);
}
