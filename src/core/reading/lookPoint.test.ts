import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readingNoise } from '../../content/readingNoise.ts';
import { normalCdf } from '../stats/normal.ts';
import { changePoint, lookPoint, trendPoint } from './lookPoint.ts';

// qnorm(1 - (1 - 0.95^(1/k)) / 2) in R 4.2.2; tolerance half a unit in the last printed place.
test.each([
  [1, 1.95996398454],
  [2, 2.23647664456],
  [5, 2.56876316801],
  [6, 2.63103828454],
])('%d comparisons', (comparisons, z) => {
  expect(Math.abs(lookPoint(comparisons, 0.05) - z)).toBeLessThan(5e-12);
});

test('of the table: six readings have five comparisons, and a trend is told at each', () => {
  expect(changePoint(readingNoise)).toBe(lookPoint(5, 0.05));
  expect(trendPoint(readingNoise)).toBe(lookPoint(6, 0.05));
});

test('gives the stated chance for independent looks, and grows with their number', () => {
  const chances = fc.oneof(fc.constantFrom(1e-6, 0.5, 0.999), fc.double({ min: 0.001, max: 0.9, noNaN: true }));
  const counts = fc.oneof(fc.constantFrom(1, 2, 1000), fc.integer({ min: 1, max: 50 }));
  fc.assert(
    fc.property(counts, chances, (k, chance) => {
      const z = lookPoint(k, chance);
      const any = -Math.expm1(k * Math.log1p(-2 * normalCdf(-z)));
      expect(Math.abs(any / chance - 1)).toBeLessThan(1e-9);
      expect(lookPoint(k + 1, chance)).toBeGreaterThan(z);
    }),
  );
});

test.each([
  [0, 0.05, /comparisons/],
  [1.5, 0.05, /comparisons/],
  [5, 0, /chance/],
  [5, 1, /chance/],
  [5, Number.NaN, /chance/],
])('refuses %d looks at %d', (comparisons, chance, message) => {
  expect(() => lookPoint(comparisons, chance)).toThrow(message);
});
