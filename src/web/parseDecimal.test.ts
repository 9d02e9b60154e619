import { expect, test } from 'vitest';
import { parseDecimal, sayNotANumber } from './parseDecimal.ts';

test.each([
  ['0.32', 0.32],
  ['0,32', 0.32],
  ['0,619', 0.619],
  [' 1450 ', 1450],
  ['22 600', 22_600],
  ['1 022 600.5', 1_022_600.5],
  ['1,450', undefined],
  ['12,345,678', undefined],
  ['', undefined],
  ['-1', undefined],
  ['1e3', undefined],
  ['about 5', undefined],
  ['.5', undefined],
  ['22 60', undefined],
])('%s', (typed, value) => {
  expect(parseDecimal(typed)).toBe(value);
});

test('a number that could be two is asked for again by name', () => {
  expect(sayNotANumber(' 1,450')).toBe('Write 1450 without the comma.');
  expect(sayNotANumber('some')).toMatch(/^A number like/);
});
