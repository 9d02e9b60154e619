import { expect, test } from 'vitest';
import { parsePastDate } from './parsePastDate.ts';

const days = { onDate: '2026-11-25', birthDate: '1980-05-20' };

test.each([
  ['0625', '2025-06'],
  ['6/25', '2025-06'],
  ['06.2025', '2025-06'],
  ['06 25', '2025-06'],
  ['2025-06', '2025-06'],
  ['2025-06-14', '2025-06-14'],
  [' 1126 ', '2026-11'],
  ['2026-11-25', '2026-11-25'],
  ['1226', undefined],
  ['1299', '1999-12'],
  ['0580', '1980-05'],
])('%s is %s', (typed, value) => {
  expect(parsePastDate(typed, days)).toEqual(value ? { value } : { problem: expect.stringMatching(/before the birth/) });
});

test.each([
  ['', /month and a year/],
  ['1325', /month and a year/],
  ['0025', /month and a year/],
  ['14.06.2025', /month and a year/],
  ['2025', /month and a year/],
  ['2025-02-30', /month and a year/],
  ['2026-11-26', /after this visit/],
  ['12/2026', /after this visit/],
  ['1980-05-19', /before the birth/],
  ['04.1980', /before the birth/],
])('%s is refused', (typed, words) => {
  expect(parsePastDate(typed, days)).toEqual({ problem: expect.stringMatching(words) });
});
