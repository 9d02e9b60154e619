import { expect, test } from 'vitest';
import { isDateOrMonth, monthAfter, sayMonth } from './dateOrMonth.ts';

test.each([
  ['2026-11-25', true],
  ['2024-02-29', true],
  ['2026-11', true],
  ['2026-02-29', false],
  ['2026-13', false],
  ['2026-00-10', false],
  ['2026', false],
  ['25.11.2026', false],
  ['2026-11-25T10:00:00Z', false],
  ['', false],
])('%s', (text, isOne) => expect(isDateOrMonth(text)).toBe(isOne));

test.each([
  ['2026-08-31', 6, '2027-02'],
  ['2026-12-31', 0, '2026-12'],
  ['2026-11', 24, '2028-11'],
  ['2026-01-01', 12, '2027-01'],
] as const)('%s and %i months is in %s, in every zone', (text, months, month) => expect(monthAfter(text, months)).toBe(month));

test('a month in words', () => expect([sayMonth('2025-06'), sayMonth('2025-12-31')]).toEqual(['June 2025', 'December 2025']));
