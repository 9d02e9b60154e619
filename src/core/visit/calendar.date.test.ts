import { addMonths, differenceInCalendarDays, formatISO, parseISO } from 'date-fns';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addMonthsToDate, daysBetween, isMoreThanMonthsLater, parseDate, wholeMonthsBetween } from './calendar.ts';

test.each([
  ['2026-11-25', 3, '2027-02-25'],
  ['2026-11-30', 3, '2027-02-28'],
  ['2027-12-31', 2, '2028-02-29'],
  ['2026-03-29', 0, '2026-03-29'],
  ['0099-12-31', 1, '0100-01-31'],
])('%s and %i months is %s, in any zone', (date, months, then) => {
  expect(addMonthsToDate(date, months)).toBe(then);
});

test.each([
  '2026-02-29',
  '2100-02-29',
  '2026-13-01',
  '2026-00-10',
  '2026-04-31',
  '2026-11-00',
  '2026-1-1',
  '20261125',
  '2026-11-25T10:00',
  '',
])('"%s" is no date', (text) => {
  expect(parseDate(text)).toBeUndefined();
  expect(() => addMonthsToDate(text, 1)).toThrow(RangeError);
  expect(() => daysBetween('2026-11-25', text)).toThrow(RangeError);
  expect(() => wholeMonthsBetween(text, '2026-11-25')).toThrow(RangeError);
});

test('a leap year has its day', () => {
  expect(parseDate('2000-02-29')).toEqual({ year: 2000, month: 2, day: 29 });
  expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  expect(wholeMonthsBetween('2008-02-29', '2026-02-28')).toBe(215);
});

// The peer counts in the machine's zone, which these tests change: days on which clocks are put forward or back must not matter.
test('agrees with date-fns', () => {
  const edges = ['1899-12-31', '1900-02-28', '2000-02-29', '2024-02-29', '2026-03-29', '2026-10-25', '2026-12-31', '2100-02-28'];
  const anyDay = fc.nat(80_000).map((n) => new Date(Date.UTC(1890, 0, 1) + n * 86_400_000).toISOString().slice(0, 10));
  const day = fc.oneof(fc.constantFrom(...edges), anyDay);
  fc.assert(
    fc.property(day, day, fc.oneof(fc.constantFrom(0, 1, 6, 12, 24), fc.nat(1_500)), (a, b, months) => {
      expect(daysBetween(a, b)).toBe(differenceInCalendarDays(parseISO(b), parseISO(a)));
      const then = formatISO(addMonths(parseISO(a), months), { representation: 'date' });
      expect(addMonthsToDate(a, months)).toBe(then);
      for (const later of [b, then, addMonthsToDate(a, months + 1)]) expect(isMoreThanMonthsLater(a, months, later)).toBe(later > then);
    }),
  );
});
