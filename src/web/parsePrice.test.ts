import { expect, test } from 'vitest';
import { parsePrice } from './parsePrice.ts';

test.each([
  ['12.50', 1250],
  ['12,5', 1250],
  ['12', 1200],
  ['0.05', 5],
  ['', undefined],
  ['12.505', undefined],
  ['-1', undefined],
  ['free', undefined],
])('price %s', (typed, cents) => {
  expect(parsePrice(typed)).toBe(cents);
});
