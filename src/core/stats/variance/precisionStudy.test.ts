import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { centredValues } from '../centredValues.ts';
import { cochranLimit, cochranTest } from './cochranTest.ts';
import { grubbsLimit, grubbsTest } from './grubbsTest.ts';
import { mandelLimits, mandelStatistics } from './mandelStatistics.ts';
import { precisionStudy } from './precisionStudy.ts';

const groupsOf = (names: readonly (string | number)[], values: readonly number[]): number[][] =>
  [...new Set(names)].map((name) => values.filter((_, i) => names[i] === name));
const { iso5725 } = JSON.parse(readFileSync('test/reference/statistics/gauge.json', 'utf8'));

test('own simulation, natural logs, against R', () => {
  // test/reference/statistics/gauge.json, computed in R 4.2.2. Tolerance: 1e-9 relative.
  const laboratories = groupsOf(
    iso5725.lab,
    iso5725.rlu.map((rlu: number) => Math.log(rlu)),
  );
  const got = precisionStudy(laboratories);
  const { h, k } = mandelStatistics(laboratories);
  const grubbs = grubbsTest(laboratories.map((results) => centredValues(results).mean));
  const pairs: [number | undefined, number][] = [
    [got.mean, iso5725.mean],
    [got.repeatabilitySd, iso5725.sr],
    [got.betweenSd, iso5725.sL],
    [got.rawBetweenVariance, iso5725.sL2_raw],
    [got.reproducibilitySd, iso5725.sR],
    [got.meanCount, iso5725.nbar],
    [got.limits.repeatability, iso5725['r_limit_2.8']],
    [got.limits.reproducibility, iso5725['R_limit_2.8']],
    [cochranTest(laboratories).c ?? undefined, iso5725.cochran_C],
    [grubbs?.high, iso5725.grubbs_high],
    [grubbs?.low, iso5725.grubbs_low],
    ...iso5725.mandel_h.map((want: number, i: number) => [h?.[i], want]),
    ...iso5725.mandel_k.map((want: number, i: number) => [k?.[i], want]),
  ];
  for (const [value = Number.NaN, want] of pairs) expect(Math.abs(value / want - 1)).toBeLessThan(1e-9);
});

// Sulfur in coal, level 1, 8 laboratories, ISO 5725-2:1994. Data and results recalled from memory; they fit each other.
// Tolerance: half a unit in the last printed place.
test('published example with unequal numbers of results', () => {
  const coal = [
    [0.71, 0.71, 0.7, 0.71],
    [0.69, 0.67, 0.68],
    [0.66, 0.65, 0.69],
    [0.67, 0.65, 0.66],
    [0.7, 0.69, 0.66, 0.71, 0.69],
    [0.73, 0.74, 0.73],
    [0.71, 0.71, 0.69],
    [0.7, 0.65, 0.68],
  ];
  const got = precisionStudy(coal);
  expect(Math.abs(got.mean - 0.69)).toBeLessThanOrEqual(0.0005);
  expect(Math.abs(got.repeatabilitySd - 0.015)).toBeLessThanOrEqual(0.0005);
  expect(Math.abs(got.reproducibilitySd - 0.026)).toBeLessThanOrEqual(0.0005);
});

// Serum glucose, material A, 8 laboratories x 3, ASTM E691. Data and results recalled from memory; they fit each other.
// Tolerance: half a unit in the last printed place.
test('published example whose between-laboratory variance is estimated below 0', () => {
  const glucose = [
    [41.03, 41.45, 41.37],
    [41.17, 42, 41.15],
    [41.01, 40.68, 42.66],
    [39.37, 42.37, 42.63],
    [41.88, 41.19, 41.32],
    [43.28, 40.5, 42.28],
    [41.08, 41.27, 39.02],
    [43.36, 42.65, 41.72],
  ];
  const got = precisionStudy(glucose);
  expect(got.rawBetweenVariance).toBeLessThan(0);
  expect(got.betweenSd).toBe(0);
  expect(Math.abs(got.mean - 41.5183)).toBeLessThanOrEqual(0.00005);
  expect(Math.abs(got.repeatabilitySd - 1.0632)).toBeLessThanOrEqual(0.00005);
  expect(got.reproducibilitySd).toBe(got.repeatabilitySd);
});

// Tables of critical values as printed in statistics books and ISO 5725-2, from memory. Tolerance: half a unit in the last printed place,
// a whole one for k and C at 3 places, where the printed tables differ among themselves.
test('critical values', () => {
  expect(grubbsLimit(8, 0.05)).toBeCloseTo(2.126, 2);
  expect(grubbsLimit(8, 0.01)).toBeCloseTo(2.274, 3);
  expect(Math.abs(cochranLimit(8, 3, 0.05) - 0.516)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(cochranLimit(8, 3, 0.01) - 0.615)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(mandelLimits(8, 3, 0.01).h - 2.06)).toBeLessThanOrEqual(0.01);
});

describe('the statistics of a precision study', () => {
  const value = fc.oneof(fc.constantFrom(1, 1000), fc.double({ min: 1, max: 1000, noNaN: true }));
  const studies = fc.array(fc.array(value, { minLength: 2, maxLength: 4 }), { minLength: 3, maxLength: 6 });

  it('keep their bounds, and move with the unit', () => {
    fc.assert(
      fc.property(studies, (study) => {
        const got = precisionStudy(study);
        const scaled = precisionStudy(study.map((results) => results.map((x) => 10 * x)));
        expect(got.reproducibilitySd).toBeGreaterThanOrEqual(got.repeatabilitySd);
        expect(scaled.reproducibilitySd).toBeCloseTo(10 * got.reproducibilitySd, 6);
        const { h, k } = mandelStatistics(study);
        if (h) expect(h.reduce((sum, x) => sum + x, 0)).toBeCloseTo(0, 8);
        if (k) expect(k.reduce((sum, x) => sum + x ** 2, 0)).toBeCloseTo(study.length, 8);
        const { c } = cochranTest(study);
        if (c !== null) expect(c >= 1 / study.length - 1e-12 && c <= 1).toBe(true);
        expect(got.meanCount).toBeLessThanOrEqual(study.flat().length / study.length + 1e-12);
      }),
    );
  });

  it('are null where nothing varies', () => {
    const still = [
      [3, 3],
      [3, 3],
      [3, 3],
    ];
    expect(mandelStatistics(still)).toEqual({ h: null, k: null });
    expect(cochranTest(still).c).toBe(null);
    expect(grubbsTest([3, 3, 3])).toBe(null);
    expect(precisionStudy(still).reproducibilitySd).toBe(0);
  });

  it('name the laboratory with too few results', () => {
    expect(() => precisionStudy([[1, 2], [3]])).toThrow(/laboratories\.1 must have at least two results: 1/);
    expect(() => mandelStatistics([[1, 2]])).toThrow(/laboratories must be at least two/);
    expect(() => grubbsTest([1, 2])).toThrow(/values must be at least three/);
  });
});
