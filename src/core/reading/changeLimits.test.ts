import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { changeLimits } from './changeLimits.ts';
import { compareReadings } from './compareReadings.ts';
import { logSdOfCv } from './logSdOfCv.ts';

interface Case<Dataset, Outputs> {
  readonly id: string;
  readonly dataset: Dataset;
  readonly outputs: Outputs;
}
type Numbers<Name extends string> = Readonly<Record<Name, number>>;
const file: { cases: readonly Case<unknown, unknown>[] } = JSON.parse(readFileSync('test/reference/statistics/change.json', 'utf8'));
const relative = (got: number, want: number) => Math.abs(got - want) / Math.max(1e-12, Math.abs(want));

/** The cases whose id begins so; the caller states their shape. */
function named<Dataset, Outputs>(start: string): readonly Case<Dataset, Outputs>[] {
  const found = file.cases.filter((c) => c.id.startsWith(start));
  if (found.length === 0) throw new Error(`no reference case ${start}`);
  return found as readonly Case<Dataset, Outputs>[];
}
const limitCases = named<
  Numbers<'cv_analytical' | 'cv_within' | 'z' | 'nA' | 'nS'>,
  Numbers<'rcv_normal' | 'sigma_log_sum' | 'up_sum' | 'down_sum'>
>('rcv');
const changeCases = named<
  Numbers<'x1' | 'x2' | 'sigma_log_single_reading'>,
  Numbers<'ratio' | 'log_ratio' | 'z' | 'p_two_sided'> & { readonly ci95_ratio: readonly [number, number] }
>('change_test');
const sdCases = named<{ readonly cv: readonly number[] }, { readonly sigma: readonly number[] }>('cv_sigma');

// Formulas computed in R 4.2.2 (test/reference/statistics/change.json). Tolerance: 1e-12 relative.
test.each(limitCases)('limits $id', ({ dataset, outputs }) => {
  const got = changeLimits({
    cvAnalytical: dataset.cv_analytical,
    cvWithinPerson: dataset.cv_within,
    z: dataset.z,
    assaysPerSample: dataset.nA,
    samplesPerOccasion: dataset.nS,
  });
  expect(relative(got.normalFraction, outputs.rcv_normal)).toBeLessThan(1e-12);
  expect(relative(got.sdLog, outputs.sigma_log_sum)).toBeLessThan(1e-12);
  expect(relative(got.riseFraction, outputs.up_sum)).toBeLessThan(1e-12);
  expect(relative(got.fallFraction, outputs.down_sum)).toBeLessThan(1e-12);
});

test.each(changeCases)('change $id', ({ dataset, outputs }) => {
  const got = compareReadings(dataset.x1, dataset.x2, dataset.sigma_log_single_reading);
  expect(relative(got.ratio, outputs.ratio)).toBeLessThan(1e-12);
  expect(relative(got.logRatio, outputs.log_ratio)).toBeLessThan(1e-12);
  expect(relative(got.z, outputs.z)).toBeLessThan(1e-12);
  expect(relative(got.pTwoSided, outputs.p_two_sided)).toBeLessThan(1e-12);
  expect(relative(got.ratioInterval.low, outputs.ci95_ratio[0])).toBeLessThan(1e-12);
  expect(relative(got.ratioInterval.high, outputs.ci95_ratio[1])).toBeLessThan(1e-12);
});

test.each(sdCases)('sd of the log, $id', ({ dataset, outputs }) => {
  dataset.cv.forEach((cv, i) => {
    expect(relative(logSdOfCv(cv), outputs.sigma[i] ?? Number.NaN)).toBeLessThan(1e-13);
  });
});

// Within-person variation of a heart-failure marker, 131 patients, Am Heart J 2009 (abstract): +240.4 % and -70.6 %.
// Tolerance: half a unit in the last printed place of the fall, given the rise.
it('agrees with a published pair of limits', () => {
  const sdLog = Math.log(3.404) / (1.96 * Math.SQRT2);
  const { fallFraction } = changeLimits({ cvAnalytical: 0, cvWithinPerson: Math.sqrt(Math.expm1(sdLog ** 2)), z: 1.96 });
  expect(Math.abs(100 * fallFraction + 70.6)).toBeLessThanOrEqual(0.05);
});

const cvs = fc.oneof(fc.constantFrom(0, 1e-6, 1, 3), fc.double({ min: 0, max: 3, noNaN: true }));
const counts = fc.oneof(fc.constantFrom(1, 1000), fc.integer({ min: 1, max: 20 }));

describe('changeLimits', () => {
  it('mirrors: (1 + rise)(1 + fall) = 1, and a fall never passes 100 %', () => {
    fc.assert(
      fc.property(cvs, cvs, counts, counts, (cvAnalytical, cvWithinPerson, assaysPerSample, samplesPerOccasion) => {
        const got = changeLimits({ cvAnalytical, cvWithinPerson, assaysPerSample, samplesPerOccasion });
        expect((1 + got.riseFraction) * (1 + got.fallFraction)).toBeCloseTo(1, 9);
        expect(got.fallFraction).toBeGreaterThan(-1);
        expect(got.riseFraction).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('agrees with the test of a change at the limit itself', () => {
    const { sdLog, riseFraction, fallFraction } = changeLimits({ cvAnalytical: 0.3, cvWithinPerson: 0.5 });
    expect(compareReadings(1000, 1000 * (1 + riseFraction) * 1.0001, sdLog).verdict).toBe('rise');
    expect(compareReadings(1000, 1000 * (1 + riseFraction) * 0.9999, sdLog).verdict).toBe('within-noise');
    expect(compareReadings(1000, 1000 * (1 + fallFraction) * 0.9999, sdLog).verdict).toBe('fall');
    expect(compareReadings(1000, 1000 * (1 + fallFraction) * 1.0001, sdLog).verdict).toBe('within-noise');
  });

  it('shrinks with the root of the number of swabs; more assays of one swab shrink repeatability alone', () => {
    const [one, four] = [1, 4].map((samplesPerOccasion) => changeLimits({ cvAnalytical: 0.3, cvWithinPerson: 0.5, samplesPerOccasion }));
    expect((one?.sdLog ?? 0) / (four?.sdLog ?? 0)).toBeCloseTo(2, 12);
    expect((one?.normalFraction ?? 0) / (four?.normalFraction ?? 0)).toBeCloseTo(2, 12);
    const manyAssays = changeLimits({ cvAnalytical: 0.3, cvWithinPerson: 0.5, assaysPerSample: 1e9 });
    expect(manyAssays.sdLog).toBeCloseTo(logSdOfCv(0.5), 6);
  });

  test.each([
    [{ cvAnalytical: -0.1, cvWithinPerson: 0.4 }, /cvAnalytical/],
    [{ cvAnalytical: 0.1, cvWithinPerson: 40 }, /cvWithinPerson/],
    [{ cvAnalytical: 0.1, cvWithinPerson: Number.NaN }, /cvWithinPerson/],
    [{ cvAnalytical: 0.1, cvWithinPerson: 0.4, z: 0 }, /^z/],
    [{ cvAnalytical: 0.1, cvWithinPerson: 0.4, assaysPerSample: 0 }, /assaysPerSample/],
    [{ cvAnalytical: 0.1, cvWithinPerson: 0.4, samplesPerOccasion: 1.5 }, /samplesPerOccasion/],
  ])('refuses %j', (input, field) => expect(() => changeLimits(input)).toThrow(field));
});

describe('compareReadings', () => {
  const readings = fc.oneof(fc.constantFrom(1, 40, 60_000), fc.double({ min: 1, max: 60_000, noNaN: true }));
  const sds = fc.double({ min: 0.05, max: 2, noNaN: true });

  it('is inverted by swapping the readings and unmoved by the scale of the meter', () => {
    fc.assert(
      fc.property(readings, readings, sds, fc.constantFrom(0.01, 7, 1000), (first, second, sd, scale) => {
        const [there, back, scaled] = [
          compareReadings(first, second, sd),
          compareReadings(second, first, sd),
          compareReadings(scale * first, scale * second, sd),
        ];
        expect(there.z + back.z).toBe(0);
        expect(there.ratioInterval.low * back.ratioInterval.high).toBeCloseTo(1, 9);
        expect(there.pTwoSided).toBe(back.pTwoSided);
        expect(scaled.z).toBeCloseTo(there.z, 9);
        expect(there.ratioInterval.low).toBeLessThanOrEqual(there.ratio);
        expect(there.ratioInterval.high).toBeGreaterThanOrEqual(there.ratio);
      }),
    );
  });

  test.each([
    [0, 100, 0.3, /firstRlu/],
    [100, Number.POSITIVE_INFINITY, 0.3, /secondRlu/],
    [100, 100, 0, /sdLogSingle/],
  ])('refuses %s, %s, %s', (first, second, sd, field) => expect(() => compareReadings(first, second, sd)).toThrow(field));
});
