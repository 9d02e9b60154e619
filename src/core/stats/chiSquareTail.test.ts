import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chiSquareQuantile } from './chiSquare.ts';
import { chiSquareTail } from './chiSquareTail.ts';

// pchisq(x, df, lower.tail = FALSE) in R 4.2.2; relative tolerance 1e-12.
test.each([
  [1, 6.6, 0.0101978767762403],
  [2, 9, 0.0111089965382423],
  [3, 0.2, 0.977589297761649],
  [4, 13.3, 0.00989926910681374],
  [7, 30, 9.49597250813418e-5],
  [10, 10, 0.440493285065212],
  [25, 44.3, 0.0100366062362308],
])('%d degrees of freedom at %d', (df, x, tail) => {
  expect(Math.abs(chiSquareTail(x, df) / tail - 1)).toBeLessThan(1e-12);
});

test('is the inverse of the quantile, all at 0 and nothing far out', () => {
  const dfs = fc.oneof(fc.constantFrom(1, 2, 3, 40), fc.integer({ min: 1, max: 30 }));
  const ps = fc.oneof(fc.constantFrom(1e-6, 0.01, 0.99), fc.double({ min: 0.001, max: 0.999, noNaN: true }));
  fc.assert(
    fc.property(dfs, ps, (df, p) => {
      expect(Math.abs(chiSquareTail(chiSquareQuantile(1 - p, df), df) / p - 1)).toBeLessThan(1e-8);
      expect(chiSquareTail(0, df)).toBe(1);
      expect(chiSquareTail(1e6, df)).toBe(0);
    }),
  );
});

test.each([
  [-1, 2, /x/],
  [Number.NaN, 2, /x/],
  [1, 0, /df/],
  [1, 1.5, /df/],
])('refuses %d at %d', (x, df, message) => {
  expect(() => chiSquareTail(x, df)).toThrow(message);
});
