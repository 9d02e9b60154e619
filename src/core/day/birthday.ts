import { plainDigits } from './clockTime.ts';

/** Which number of a date like 04/03/1980 is the day. */
export type DateOrder = 'day-first' | 'month-first';

/** A birthday as it was typed. */
export type Birthday =
  | { readonly kind: 'date'; readonly iso: string }
  /** Both readings are days of the calendar, and they differ. */
  | { readonly kind: 'either'; readonly dayFirst: string; readonly monthFirst: string }
  /** Only one of the readings is a day of the calendar, so the text tells the order. */
  | { readonly kind: 'one'; readonly iso: string; readonly order: DateOrder }
  | { readonly kind: 'unreadable'; readonly why: string };

const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4})$/;
const TWO_DIGIT_YEAR = /^\d{1,2}[-/. ]\d{1,2}[-/. ]\d{2}$/;

/** Reads "1980-03-04", "19800304", "4/3/1980", "04.03.1980" and "04031980", and never guesses which number is the day. */
export function readBirthday(typed: string): Birthday {
  const text = plainDigits(typed).trim().replaceAll(/\s+/g, ' ');
  const yearFirst = YEAR_FIRST.exec(text) ?? /^(\d{4})(\d{2})(\d{2})$/.exec(text);
  if (yearFirst && isYear(yearFirst[1])) {
    const iso = isoOf(yearFirst[1], yearFirst[2], yearFirst[3]);
    // A month of 19 or 20 means that the year stands at the end.
    if (iso !== undefined) return { kind: 'date', iso };
  }
  const yearLast = YEAR_LAST.exec(text) ?? /^(\d{2})(\d{2})(\d{4})$/.exec(text);
  if (yearLast && isYear(yearLast[3])) return readBothWays(yearLast);
  if (TWO_DIGIT_YEAR.test(text)) return { kind: 'unreadable', why: 'the year needs four digits' };
  if (!yearFirst && !yearLast) return { kind: 'unreadable', why: 'not a date' };
  const isYearRight = isYear(yearFirst?.[1]) || isYear(yearLast?.[3]);
  return { kind: 'unreadable', why: isYearRight ? 'no such day in the calendar' : 'the year is not between 1900 and 2099' };
}

/** The date in the order that was chosen; undefined where it is no date in that order. */
export function birthdayIn(birthday: Birthday, order: DateOrder | undefined): string | undefined {
  switch (birthday.kind) {
    case 'date':
      return birthday.iso;
    case 'one':
      return order === undefined || order === birthday.order ? birthday.iso : undefined;
    case 'either':
      if (order === undefined) return undefined;
      return order === 'day-first' ? birthday.dayFirst : birthday.monthFirst;
    case 'unreadable':
      return undefined;
  }
}

function readBothWays([, first, second, year]: readonly (string | undefined)[]): Birthday {
  const dayFirst = isoOf(year, second, first);
  const monthFirst = isoOf(year, first, second);
  if (dayFirst !== undefined && monthFirst !== undefined)
    return dayFirst === monthFirst ? { kind: 'date', iso: dayFirst } : { kind: 'either', dayFirst, monthFirst };
  if (dayFirst !== undefined) return { kind: 'one', iso: dayFirst, order: 'day-first' };
  if (monthFirst !== undefined) return { kind: 'one', iso: monthFirst, order: 'month-first' };
  return { kind: 'unreadable', why: 'no such day in the calendar' };
}

const isYear = (year: string | undefined): boolean => year !== undefined && /^(19|20)/.test(year);

function isoOf(year = '', month = '', day = ''): string | undefined {
  const iso = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const date = new Date(`${iso}T00:00:00Z`);
  // Some engines roll 31 February over into March.
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(iso) ? iso : undefined;
}
