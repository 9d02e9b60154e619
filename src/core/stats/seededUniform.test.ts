import { expect, it, test } from 'vitest';
import { quantileType7 } from './quantileType7.ts';
import { seededUniform } from './seededUniform.ts';

it('is uniform, uncorrelated from draw to draw, and follows from the seed alone', () => {
  const random = seededUniform(42);
  const n = 20_000;
  const draws = Array.from({ length: n }, random);
  const bins = new Array<number>(20).fill(0);
  for (const u of draws) {
    expect(u >= 0 && u < 1).toBe(true);
    bins[Math.floor(20 * u)] = (bins[Math.floor(20 * u)] ?? 0) + 1;
  }
  // Chi-square with 19 df: 0.999 quantile 43.8.
  expect(bins.reduce((sum, count) => sum + (count - n / 20) ** 2 / (n / 20), 0)).toBeLessThan(43.8);
  const product = draws.slice(1).reduce((sum, u, i) => sum + (u - 0.5) * ((draws[i] ?? 0) - 0.5), 0) / n;
  expect(Math.abs(product) * 12 * Math.sqrt(n)).toBeLessThan(4);
  const again = seededUniform(42);
  expect(draws.slice(0, 5)).toEqual(Array.from({ length: 5 }, again));
  expect(seededUniform(43)()).not.toBe(draws[0]);
  expect(() => seededUniform(0.5)).toThrow(/^seed/);
});

// R 4.2.2: quantile(c(1, 2, 4, 8), c(0, .1, .5, .975, 1)). Exact.
test('quantileType7', () => {
  expect([0, 0.1, 0.5, 1].map((share) => quantileType7([1, 2, 4, 8], share))).toEqual([1, 1.3, 3, 8]);
  expect(quantileType7([1, 2, 4, 8], 0.975)).toBeCloseTo(7.7, 12);
  expect(() => quantileType7([], 0.5)).toThrow(/^sorted/);
  expect(() => quantileType7([1], 1.1)).toThrow(/^share/);
});
