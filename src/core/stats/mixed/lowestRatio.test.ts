import fc from 'fast-check';
import { expect, it } from 'vitest';
import { lowestRatio } from './lowestRatio.ts';

it('finds the lowest point of a valley, or 0 where the function only rises', () => {
  fc.assert(
    fc.property(fc.oneof(fc.constantFrom(0, 1e-3, 1e4), fc.double({ min: -5, max: 50, noNaN: true })), (place) => {
      const got = lowestRatio((ratio) => ({ value: (ratio - place) ** 2, slope: 2 * (ratio - place) }));
      expect(got).toBeCloseTo(Math.max(0, place), 8);
    }),
  );
});

it('takes the lower of two valleys, also when one is at 0', () => {
  // Slope (x - 1)(x - 4)(x - 12): low at 1 and at 12, and lower at 12.
  const curve = (x: number) => ({
    value: x ** 4 / 4 - (17 * x ** 3) / 3 + 32 * x ** 2 - 48 * x,
    slope: (x - 1) * (x - 4) * (x - 12),
  });
  expect(lowestRatio(curve)).toBeCloseTo(12, 8);
  // Low at 0 and near 2.7, and lower at 0.
  const beyond = (x: number) => Math.max(0, x - 2.5);
  const fromZero = (x: number) => ({
    value: x ** 2 - x ** 3 / 3 + 20 * beyond(x) ** 3,
    slope: 2 * x - x ** 2 + 60 * beyond(x) ** 2,
  });
  expect(lowestRatio(fromZero)).toBe(0);
});

it('says so where the function falls without end or has no value', () => {
  expect(lowestRatio((x) => ({ value: -x, slope: -1 }))).toBe(undefined);
  expect(lowestRatio(() => undefined)).toBe(undefined);
});
