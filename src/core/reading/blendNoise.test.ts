import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { testMeter as meter } from '../../../test/testMeter.ts';
import { readingNoise } from '../../content/readingNoise.ts';
import { blendNoise, noiseOfMeter } from './blendNoise.ts';
import { logVarianceOfCv } from './logSdOfCv.ts';
import { changeParts, OCCASION_PARTS, occasionSdLog, READING_PARTS, readingSdLog, sumOfParts, unknownParts } from './noiseSums.ts';
import { NOISE_PARTS, type NoisePart, type OwnEstimate } from './types.ts';

const study = (component: NoisePart, variance: number, degreesOfFreedom: number, over: Partial<OwnEstimate> = {}): OwnEstimate => ({
  component,
  variance,
  degreesOfFreedom,
  studyId: 's1',
  reportedOn: '2026-05-01',
  kind: 'hands',
  ...over,
});
const blend = (...own: readonly OwnEstimate[]) => blendNoise(readingNoise, { ...meter, own });

describe('without own studies', () => {
  const noise = blendNoise(readingNoise, meter);

  test('the figures of the meter stand as they are, and what nobody knows is not taken as nothing', () => {
    expect(noise.repeatability).toMatchObject({ variance: logVarianceOfCv(0.3, 'cv'), own: null, ownWeight: 0 });
    expect(noise.withinPerson.variance).toBeCloseTo(Math.log(1.25), 15);
    expect([noise.operator.variance, noise.lot.variance, noise.meter.variance]).toEqual([null, null, null]);
    expect(unknownParts(noise, OCCASION_PARTS).map(({ part }) => part)).toEqual(['operator', 'lot']);
    expect(readingSdLog(noise) ** 2).toBeCloseTo(Math.log(1.09), 14);
    expect(occasionSdLog(noise) ** 2).toBeCloseTo(Math.log(1.09) + Math.log(1.25), 14);
  });

  test('a figure typed as measured counts more than an assumed one', () => {
    const typed = blendNoise(readingNoise, { ...meter, cvAnalyticalAssumed: false });
    expect(typed.repeatability.prior).toMatchObject({ from: 'typed', degreesOfFreedom: 9 });
    expect(typed.withinPerson.prior).toMatchObject({ from: 'assumed', degreesOfFreedom: 4 });
  });
});

// By hand; tolerance: double rounding.
test.each([
  ['one study', [study('repeatability', 0.02, 54)], 'repeatability', (4 * Math.log(1.09) + 54 * 0.02) / 58, 54 / 58],
  [
    'two studies, pooled by their degrees of freedom',
    [study('withinPerson', 0.4, 12), study('withinPerson', 0.1, 4, { studyId: 's2' })],
    'withinPerson',
    (4 * Math.log(1.25) + 16 * 0.325) / 20,
    0.8,
  ],
  ['a part without a figure before', [study('operator', 0.01, 2)], 'operator', (2 * Math.log(1.0225) + 2 * 0.01) / 4, 0.5],
  ['less than chance', [study('lot', -0.004, 3)], 'lot', (2 * Math.log(1.01)) / 5, 0.6],
  [
    'less than chance once, more the other time',
    [study('lot', -0.004, 3), study('lot', 0.01, 3, { studyId: 's2' })],
    'lot',
    (2 * Math.log(1.01) + 6 * 0.003) / 8,
    0.75,
  ],
] as const)('%s', (_what, own, part, variance, weight) => {
  const got = blend(...own)[part];
  expect(got.variance).toBeCloseTo(variance, 14);
  expect(got.ownWeight).toBeCloseTo(weight, 14);
});

test('readings are counted where every study says how many', () => {
  const [first, second] = [study('lot', 0.01, 3, { readings: 24 }), study('lot', 0.01, 3, { studyId: 's2', readings: 12 })];
  expect(blend(first, second).lot.own).toMatchObject({ readings: 36, studies: 2, degreesOfFreedom: 6 });
  expect(blend(first, { ...second, readings: undefined }).lot.own?.readings).toBe(null);
});

test('refuses what is no number, by name', () => {
  expect(() => blend(study('lot', Number.NaN, 3))).toThrow(/variance of s1/);
  expect(() => blend(study('lot', 0.1, 0))).toThrow(/degreesOfFreedom of s1/);
  expect(() => blendNoise(readingNoise, { ...meter, cvWithinPerson: Number.NaN })).toThrow(/cvWithinPerson/);
});

const df = fc.oneof(fc.constantFrom(1e-6, 0.5, 1, 1e6), fc.double({ min: 0.1, max: 200, noNaN: true }));
const variance = fc.oneof(fc.constantFrom(-9, -1e-12, 0, 1e-12, 9), fc.double({ min: -0.5, max: 2, noNaN: true }));
const studies = fc.array(fc.record({ part: fc.constantFrom(...NOISE_PARTS), variance, df }), { minLength: 0, maxLength: 6 });

test('each blend lies between what was assumed and what was found, is never nothing, and does not ask for the order of studies', () => {
  fc.assert(
    fc.property(studies, (list) => {
      const own = list.map((s, i) => study(s.part, s.variance, s.df, { studyId: `s${i}` }));
      const noise = blend(...own);
      const turned = blend(...[...own].reverse());
      for (const part of NOISE_PARTS) {
        const { variance: used, prior, own: pooled, ownWeight } = noise[part];
        expect(ownWeight >= 0 && ownWeight < 1).toBe(true);
        if (pooled === null) continue;
        if (used === null) throw new Error('a part that was measured is used');
        const [low, high] = [Math.min(prior.variance, pooled.variance), Math.max(prior.variance, pooled.variance)];
        expect(used > 0 && used >= low - 1e-12 && used <= high + 1e-12).toBe(true);
        expect(Math.abs(used - (turned[part].variance ?? Number.NaN))).toBeLessThanOrEqual(1e-12 * Math.max(1, used));
      }
      expect(sumOfParts(noise, READING_PARTS)).toBeLessThanOrEqual(sumOfParts(noise, OCCASION_PARTS));
      const shared = { sameOperator: true, sameLot: true };
      expect(changeParts(shared)).toEqual(['repeatability', 'withinPerson']);
    }),
  );
});

// The blend is the best estimate where variances between meters follow the prior: scaled inverse chi-square, drawn 20,000 times with a
// study of 6 degrees of freedom each. Its mean of 1 / variance weights: E[1 / sigma^2 | study] = 1 / blend exactly. Seeded; tolerance
// four standard errors (0.02).
test('is the harmonic mean of what the variance may be, by simulation', () => {
  const { normal } = seededRandom(20_261_126);
  const chiSquare = (n: number) => Array.from({ length: n }, normal).reduce((sum, z) => sum + z * z, 0);
  const [nu0, nu, s0] = [4, 6, Math.log(1.09)];
  let [sum, sumOfSquares] = [0, 0];
  const runs = 20_000;
  for (let i = 0; i < runs; i++) {
    const sigma2 = (nu0 * s0) / chiSquare(nu0);
    const found = (sigma2 * chiSquare(nu)) / nu;
    const used = blend(study('repeatability', found, nu)).repeatability.variance ?? Number.NaN;
    sum += used / sigma2;
    sumOfSquares += (used / sigma2) ** 2;
  }
  const mean = sum / runs;
  const se = Math.sqrt((sumOfSquares / runs - mean ** 2) / runs);
  expect(Math.abs(mean - 1)).toBeLessThan(4 * se);
  expect(se).toBeLessThan(0.01);
});

test('is kept for as long as the meter, and another meter has its own', () => {
  expect(noiseOfMeter(readingNoise, meter)).toBe(noiseOfMeter(readingNoise, meter));
  expect(noiseOfMeter(readingNoise, { ...meter, cvAnalytical: 0.1 }).repeatability.variance).toBeCloseTo(Math.log(1.01), 14);
});
