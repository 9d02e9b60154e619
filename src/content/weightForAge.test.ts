import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { percentileKg, plannerWeightKg } from '../core/regimen/plannerWeightKg.ts';
import { weightForAge } from './weightForAge.ts';

const reference = JSON.parse(readFileSync(new URL('../../test/reference/regimen/data.json', import.meta.url), 'utf8')) as {
  weights: readonly { ageMonths: number; plannerKg: number; boysP5Kg: number; girlsP5Kg: number }[];
  cdcP5: readonly { sex: number; ageMonths: number; p5: number }[];
};
const Z05 = -1.6448536269514722;

// test/reference/regimen/data.json, weights (derived from WHO 2006 and CDC 2000, printed to 0.1 kg). Tolerance: none for the planner's
// weight, half of the last printed place for the percentiles.
test.each(reference.weights)(
  'planner weight and both 5th percentiles at $ageMonths months',
  ({ ageMonths, plannerKg, boysP5Kg, girlsP5Kg }) => {
    expect(plannerWeightKg(ageMonths, weightForAge)).toBe(plannerKg);
    const row = weightForAge.find((r) => r.ageMonths === ageMonths);
    if (!row) throw new Error(`no row at ${ageMonths} months`);
    expect(Math.abs(percentileKg(row.boys, Z05) - boysP5Kg)).toBeLessThanOrEqual(0.0501);
    expect(Math.abs(percentileKg(row.girls, Z05) - girlsP5Kg)).toBeLessThanOrEqual(0.0501);
  },
);

// CDC 2000 weight-for-age table, printed 5th percentiles of the rows half a month before and after each birthday (public domain, read).
// Tolerance: the value at the birthday lies between its two neighbours, give or take 0.001 kg for the rounded LMS.
describe('the printed CDC percentiles on both sides of each birthday', () => {
  test.each(weightForAge.filter((r) => r.ageMonths >= 24))('$ageMonths months', ({ ageMonths, boys, girls }) => {
    for (const [sex, lms] of [
      [1, boys],
      [2, girls],
    ] as const) {
      const beside = reference.cdcP5.filter((r) => r.sex === sex && Math.abs(r.ageMonths - ageMonths) <= 0.5).map((r) => r.p5);
      expect(beside.length).toBeGreaterThan(0);
      const p5 = percentileKg(lms, Z05);
      expect(p5).toBeGreaterThanOrEqual(Math.min(...beside) - 1e-3);
      expect(p5).toBeLessThanOrEqual(Math.max(...beside) + 1e-3);
    }
  });
});

test('rows are in order of age and hold the lighter sex of 20 years for everyone older', () => {
  const ages = weightForAge.map((r) => r.ageMonths);
  expect(ages).toEqual([...ages].sort((a, b) => a - b));
  expect(plannerWeightKg(80 * 12, weightForAge)).toBe(46.3);
  expect(plannerWeightKg(4 * 12 + 11, weightForAge)).toBe(13);
});
