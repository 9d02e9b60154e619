import { expect, test } from 'vitest';
import { formatDate, formatMonth, formatMonths, formatNumber, plural } from './format.ts';

test('a local date stays the same day in every time zone', () => {
  expect(formatDate('2026-11-25')).toBe('25 November 2026');
  expect(formatDate('2026-01-01')).toBe('1 January 2026');
  expect(formatMonth('2026-12-31')).toBe('December 2026');
});

test('numbers, months and counts', () => {
  expect(formatNumber(60000)).toBe('60,000');
  expect(formatMonths(3, 4)).toBe('3 to 4 months');
  expect(formatMonths(1, 1)).toBe('1 month');
  expect(plural(1, 'answer')).toBe('1 answer');
  expect(plural(2, 'person', 'people')).toBe('2 people');
});
