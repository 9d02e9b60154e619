import { describe, expect, test } from 'vitest';
import { percentileKg, plannerWeightKg } from './plannerWeightKg.ts';
import type { WeightRow } from './tables.ts';

const flat = (mKg: number) => ({ l: 1, mKg, s: 0.1 });
const rows: readonly WeightRow[] = [
  { ageMonths: 6, boys: flat(8), girls: flat(7) },
  { ageMonths: 24, boys: flat(12), girls: flat(13) },
];

test('takes the lighter sex, at the last row at or below the age, and the last row above the table', () => {
  const z = 1 - 0.1 * 1.6448536269514722;
  const rounded = (kg: number) => Math.round(kg * 10) / 10;
  expect(plannerWeightKg(6, rows)).toBe(rounded(7 * z));
  expect(plannerWeightKg(23, rows)).toBe(rounded(7 * z));
  expect(plannerWeightKg(24, rows)).toBe(rounded(12 * z));
  expect(plannerWeightKg(900, rows)).toBe(rounded(12 * z));
});

test('says nothing below the first row', () => {
  expect(plannerWeightKg(5, rows)).toBeUndefined();
  expect(plannerWeightKg(0, [])).toBeUndefined();
});

test.each([Number.NaN, -1])('refuses an age of %s months', (age) => {
  expect(() => plannerWeightKg(age, rows)).toThrow(RangeError);
});

describe('the formula', () => {
  test('gives M at z 0, whatever L and S', () => {
    for (const l of [-2, -0.5, 0.5, 1]) expect(percentileKg({ l, mKg: 20, s: 0.12 }, 0)).toBeCloseTo(20, 12);
  });
});
