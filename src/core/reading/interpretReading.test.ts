import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { normalCdf } from '../stats/normal.ts';
import { interpretReading, type ReadingInput } from './interpretReading.ts';

interface Case<Dataset, Outputs> {
  readonly id: string;
  readonly dataset: Dataset;
  readonly outputs: Outputs;
}
type Numbers<Name extends string> = Readonly<Record<Name, number>>;
const file: { cases: readonly Case<unknown, unknown>[] } = JSON.parse(readFileSync('test/reference/statistics/conformity.json', 'utf8'));
const relative = (got: number | null | undefined, want: number) => Math.abs((got ?? Number.NaN) - want) / Math.abs(want);

/** The cases whose id begins so; the caller states their shape. */
function named<Dataset, Outputs>(start: string): readonly Case<Dataset, Outputs>[] {
  const found = file.cases.filter((c) => c.id.startsWith(start));
  if (found.length === 0) throw new Error(`no reference case ${start}`);
  return found as readonly Case<Dataset, Outputs>[];
}
const cutoffCases = named<
  Numbers<'reading' | 'cutoff' | 'cv' | 'n_replicates'>,
  Numbers<'sigma_log' | 'p_true_above' | 'p_true_below'> & { readonly ci95: readonly [number, number] }
>('lognormal_cutoff');
const guardCases = named<Numbers<'cutoff' | 'cv' | 'alpha'>, Numbers<'accept_low_if_le' | 'declare_high_if_ge'>>('guard_band');
const priorCases = named<Numbers<'y' | 'u' | 'y0' | 'u0' | 'TU'>, Numbers<'post_mean' | 'post_sd' | 'p_nonconform'>>('normal_prior');
/** `published` from memory. */
const exampleCases = named<Numbers<'y' | 'u' | 'TU'> & { readonly TL: number | string }, Numbers<'p_conform'>>('jcgm106').map((c) => ({
  ...c,
  published: c.id.includes('zener') ? 0.92 : 0.66,
}));

// Formulas computed in R 4.2.2 (test/reference/statistics/conformity.json). Tolerance: 1e-12 relative.
test.each(cutoffCases)('chance above the cut-off, $id', ({ dataset, outputs }) => {
  const got = interpretReading({
    readingRlu: dataset.reading,
    cutoffRlu: dataset.cutoff,
    cv: dataset.cv,
    replicates: dataset.n_replicates,
  });
  expect(relative(got.sdLog, outputs.sigma_log)).toBeLessThan(1e-12);
  expect(relative(got.probabilityAbove, outputs.p_true_above)).toBeLessThan(1e-12);
  expect(relative(got.probabilityBelow, outputs.p_true_below)).toBeLessThan(1e-12);
  expect(relative(got.intervalRlu?.low, outputs.ci95[0])).toBeLessThan(1e-12);
  expect(relative(got.intervalRlu?.high, outputs.ci95[1])).toBeLessThan(1e-12);
});

test.each(guardCases)('guard band, $id', ({ dataset, outputs }) => {
  const { guardBand } = interpretReading({ readingRlu: 1, cutoffRlu: dataset.cutoff, cv: dataset.cv, risk: dataset.alpha });
  expect(relative(guardBand.lowAtMostRlu, outputs.accept_low_if_le)).toBeLessThan(1e-12);
  expect(relative(guardBand.highAtLeastRlu, outputs.declare_high_if_ge)).toBeLessThan(1e-12);
});

test.each(priorCases)('normal prior, $id', ({ dataset, outputs }) => {
  const got = interpretReading({
    readingRlu: Math.exp(dataset.y),
    cutoffRlu: Math.exp(dataset.TU),
    cv: Math.sqrt(Math.expm1(dataset.u ** 2)),
    prior: { geometricMeanRlu: Math.exp(dataset.y0), sdLog: dataset.u0 },
  });
  expect(relative(got.posterior?.meanLog, outputs.post_mean)).toBeLessThan(1e-12);
  expect(relative(got.posterior?.sdLog, outputs.post_sd)).toBeLessThan(1e-12);
  expect(relative(got.probabilityAbove, outputs.p_nonconform)).toBeLessThan(1e-11);
});

// Two examples in the manner of JCGM 106:2012 (inputs and the printed 0.92 and 0.66 from memory), on the scale of the log:
// one limit above, and two limits as a difference of two. Tolerance: half a unit in the last printed place; 1e-12 against R.
test.each(exampleCases)('worked example $id', ({ dataset, outputs, published }) => {
  const cv = Math.sqrt(Math.expm1(dataset.u ** 2));
  const below = (limit: number | string) =>
    typeof limit === 'number'
      ? (interpretReading({ readingRlu: Math.exp(dataset.y), cutoffRlu: Math.exp(limit), cv }).probabilityBelow ?? 0)
      : 0;
  // An sd of the log of 1.8 needs a cv of 4.95, still within the range.
  const conform = below(dataset.TU) - below(dataset.TL);
  expect(relative(conform, outputs.p_conform)).toBeLessThan(1e-12);
  expect(Math.abs(conform - published)).toBeLessThanOrEqual(0.005);
});

const base: ReadingInput = { readingRlu: 1720, cutoffRlu: 1500, cv: 0.3 };

/** Draws the next reading from what is known now and counts how often the mean of all readings leaves its own band. */
function simulateSettling({ readingRlu, cutoffRlu, cv, replicates = 1, prior }: ReadingInput): number {
  const { normal } = seededRandom(20_240_607);
  const noise = Math.sqrt(Math.log(1 + cv * cv));
  const z = 1.6448536269514722;
  // Posterior by precisions, a different route from the weights of the code.
  const readingPrecision = replicates / noise ** 2;
  const priorPrecision = prior ? 1 / prior.sdLog ** 2 : 0;
  const priorMean = prior ? Math.log(prior.geometricMeanRlu) : 0;
  const precision = readingPrecision + priorPrecision;
  const mean = (readingPrecision * Math.log(readingRlu) + priorPrecision * priorMean) / precision;
  const draws = 400_000;
  let settled = 0;
  for (let i = 0; i < draws; i++) {
    const level = mean + normal() / Math.sqrt(precision);
    const next = level + noise * normal();
    const average = (replicates * Math.log(readingRlu) + next) / (replicates + 1);
    if (Math.abs(average - Math.log(cutoffRlu)) >= (z * noise) / Math.sqrt(replicates + 1)) settled += 1;
  }
  return settled / draws;
}

describe('settleChance', () => {
  // Reference value given to two places: reading 1720, cut-off 1500, cv 0.3, risk 0.05, no prior. Tolerance: half of the last place.
  it('is 0.17 in the reference case', () => {
    expect(Math.abs((interpretReading(base).settleChance ?? Number.NaN) - 0.17)).toBeLessThanOrEqual(0.005);
  });

  // By hand, with a prior: s = 0.2935604, prior N(ln 1300, 0.6). Weight 0.36 / (0.36 + 0.0861777) = 0.806854;
  // level about the cut-off: mean -0.1431008 + 0.806854 (0.1368593 + 0.1431008) = 0.0827861, sd 0.2935604 sqrt(0.806854) = 0.2636924;
  // next reading: sd sqrt(0.0695337 + 0.0861777) = 0.3946028; mean of two: (0.1368593 + 0.0827861)/2 = 0.1098227, sd 0.1973014;
  // band 1.6448536 x 0.2935604 / sqrt 2 = 0.3414368. Chance Phi(-1.173887) + Phi(-2.287158) = 0.120220 + 0.011094 = 0.13131.
  // Tolerance: 2e-5, the rounding of the hand computation.
  it('with a prior agrees with a derivation by hand', () => {
    const got = interpretReading({ ...base, prior: { geometricMeanRlu: 1300, sdLog: 0.6 } });
    expect(Math.abs((got.settleChance ?? Number.NaN) - 0.13131)).toBeLessThan(2e-5);
  });

  // Seeded simulation of 400,000 next swabs; tolerance 4 standard errors of a proportion of 0.25, 0.0027.
  test.each([
    { readingRlu: 1720, cutoffRlu: 1500, cv: 0.3, replicates: 1 },
    { readingRlu: 1500, cutoffRlu: 1500, cv: 0.5, replicates: 1 },
    { readingRlu: 1300, cutoffRlu: 1500, cv: 0.3, replicates: 3 },
    { readingRlu: 1720, cutoffRlu: 1500, cv: 0.3, replicates: 1, prior: { geometricMeanRlu: 1300, sdLog: 0.6 } },
    { readingRlu: 1200, cutoffRlu: 1500, cv: 0.4, replicates: 2, prior: { geometricMeanRlu: 2500, sdLog: 0.3 } },
  ])('agrees with a simulation: $readingRlu, $replicates, prior $prior', (input) => {
    const got = interpretReading(input);
    expect(got.verdict).toBe('too-close');
    expect(Math.abs((got.settleChance ?? Number.NaN) - simulateSettling(input))).toBeLessThan(0.0027);
  });

  it('is null where there is nothing left to settle, or only a bound', () => {
    expect(interpretReading({ ...base, readingRlu: 9000 }).settleChance).toBe(null);
    expect(interpretReading({ ...base, bound: 'at-least', prior: { geometricMeanRlu: 900, sdLog: 1 } }).settleChance).toBe(null);
  });
});

describe('daysToDecide', () => {
  // (1.6448536 x 0.2935604 / |ln(reading / 1500)|)^2, by hand: 12.4, 2.83, 1.19, 0.97.
  test.each([
    [1720, null],
    [2000, 3],
    [2335, 2],
    [2450, 1],
    [1500, null],
    [700, 1],
  ])('%s against 1500 at cv 0.3: %s', (readingRlu, days) => expect(interpretReading({ ...base, readingRlu }).daysToDecide).toBe(days));

  it('counts single readings, however many are averaged here', () => {
    expect(interpretReading({ ...base, readingRlu: 2000, replicates: 4 })).toMatchObject({ verdict: 'above', daysToDecide: 3 });
  });

  it('is one on the guard band itself', () => {
    const { guardBand } = interpretReading(base);
    expect(interpretReading({ ...base, readingRlu: guardBand.highAtLeastRlu })).toMatchObject({ verdict: 'above', daysToDecide: 1 });
    expect(interpretReading({ ...base, readingRlu: guardBand.lowAtMostRlu })).toMatchObject({ verdict: 'below', daysToDecide: 1 });
  });
});

describe('a reading that is only a bound', () => {
  it('without a prior has no interval and no probability', () => {
    expect(interpretReading({ ...base, bound: 'at-least' })).toMatchObject({
      intervalRlu: null,
      probabilityAbove: null,
      probabilityBelow: null,
      posterior: null,
      verdict: null,
      daysToDecide: null,
    });
  });

  test.each([
    { readingRlu: 60_000, bound: 'at-least' as const, verdict: 'above' },
    { readingRlu: 40, bound: 'at-most' as const, verdict: 'below' },
    { readingRlu: 0, bound: 'at-most' as const, verdict: 'below' },
    { readingRlu: 40, bound: 'at-least' as const, verdict: null },
    { readingRlu: 60_000, bound: 'at-most' as const, verdict: null },
  ])('$bound $readingRlu decides: $verdict', ({ verdict, ...input }) => {
    expect(interpretReading({ ...base, ...input })).toMatchObject({ verdict, daysToDecide: verdict ? 1 : null });
  });

  it('with a prior says more than the prior, less than an exact reading far beyond', () => {
    const prior = { geometricMeanRlu: 1200, sdLog: 0.9 };
    const got = interpretReading({ ...base, readingRlu: 2000, bound: 'at-least', prior });
    expect(got.probabilityAbove).toBeGreaterThan(normalCdf(Math.log(1200 / 1500) / 0.9));
    expect(got.probabilityAbove).toBeLessThan(1);
    expect((got.probabilityAbove ?? 0) + (got.probabilityBelow ?? 0)).toBeCloseTo(1, 12);
    expect(got.intervalRlu?.high).toBeGreaterThan(2000);
    expect(got.posterior?.meanLog).toBeGreaterThan(Math.log(1200));
  });
});

describe('properties', () => {
  const cutoffRlu = 4200;
  /** Half of the readings sit on the cut-off, next to it, or at the ends of a meter. */
  const rlu = fc.oneof(fc.constantFrom(4200, 4199.999, 4200.001, 40, 60_000), fc.double({ min: 40, max: 60_000, noNaN: true }));
  const cv = fc.oneof(fc.constantFrom(1e-3, 0.3, 2), fc.double({ min: 0.01, max: 2, noNaN: true }));
  const replicates = fc.oneof(fc.constantFrom(1, 50), fc.integer({ min: 1, max: 10 }));
  const risk = fc.oneof(fc.constantFrom(0.001, 0.05, 0.499), fc.double({ min: 0.001, max: 0.499, noNaN: true }));
  const prior = fc.option(fc.record({ geometricMeanRlu: rlu, sdLog: fc.double({ min: 0.05, max: 3, noNaN: true }) }), { nil: undefined });
  const ORDER = { below: 0, 'too-close': 1, above: 2 };

  it('the verdict never falls while the reading rises', () => {
    fc.assert(
      fc.property(rlu, rlu, cv, replicates, risk, (a, b, noise, count, chance) => {
        const of = (readingRlu: number) =>
          ORDER[interpretReading({ readingRlu, cutoffRlu, cv: noise, replicates: count, risk: chance }).verdict ?? 'too-close'];
        expect(of(Math.min(a, b))).toBeLessThanOrEqual(of(Math.max(a, b)));
      }),
    );
  });

  it('the interval holds the reading and the guard band the cut-off; probabilities add to 1', () => {
    fc.assert(
      fc.property(rlu, cv, replicates, risk, (readingRlu, noise, count, chance) => {
        const got = interpretReading({ readingRlu, cutoffRlu, cv: noise, replicates: count, risk: chance });
        expect(got.intervalRlu?.low).toBeLessThan(readingRlu);
        expect(got.intervalRlu?.high).toBeGreaterThan(readingRlu);
        expect(got.guardBand.lowAtMostRlu).toBeLessThan(cutoffRlu);
        expect(got.guardBand.highAtLeastRlu).toBeGreaterThan(cutoffRlu);
        expect((got.probabilityAbove ?? 0) + (got.probabilityBelow ?? 0)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('mirrors about the cut-off on the log scale and follows the scale of the meter', () => {
    fc.assert(
      fc.property(rlu, cv, replicates, fc.constantFrom(0.01, 3, 1000), (readingRlu, noise, count, scale) => {
        const common = { cutoffRlu, cv: noise, replicates: count };
        const [got, mirror, scaled] = [
          interpretReading({ ...common, readingRlu }),
          interpretReading({ ...common, readingRlu: cutoffRlu ** 2 / readingRlu }),
          interpretReading({ ...common, readingRlu: readingRlu * scale, cutoffRlu: cutoffRlu * scale }),
        ];
        expect(mirror.probabilityBelow).toBeCloseTo(got.probabilityAbove ?? Number.NaN, 9);
        expect(scaled.probabilityAbove).toBeCloseTo(got.probabilityAbove ?? Number.NaN, 9);
        expect((scaled.intervalRlu?.low ?? 0) / scale / (got.intervalRlu?.low ?? 0)).toBeCloseTo(1, 9);
        if (got.settleChance !== null && mirror.settleChance !== null) expect(mirror.settleChance).toBeCloseTo(got.settleChance, 9);
      }),
    );
  });

  it('settleChance is a probability, given exactly for the verdict "too close"', () => {
    fc.assert(
      fc.property(rlu, cv, replicates, risk, prior, (readingRlu, noise, count, chance, believed) => {
        const got = interpretReading({ readingRlu, cutoffRlu, cv: noise, replicates: count, risk: chance, prior: believed });
        expect(got.settleChance !== null).toBe(got.verdict === 'too-close');
        expect(got.settleChance ?? 0).toBeGreaterThanOrEqual(0);
        expect(got.settleChance ?? 1).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('a prior moves the probability towards itself and leaves the verdict alone', () => {
    fc.assert(
      fc.property(rlu, cv, rlu, fc.double({ min: 0.05, max: 3, noNaN: true }), (readingRlu, noise, geometricMeanRlu, sdLog) => {
        const flat = interpretReading({ readingRlu, cutoffRlu, cv: noise });
        const got = interpretReading({ readingRlu, cutoffRlu, cv: noise, prior: { geometricMeanRlu, sdLog } });
        const [low, high] = [Math.log(readingRlu), Math.log(geometricMeanRlu)].sort((a, b) => a - b) as [number, number];
        expect(got.posterior?.meanLog).toBeGreaterThanOrEqual(low - 1e-9);
        expect(got.posterior?.meanLog).toBeLessThanOrEqual(high + 1e-9);
        expect(got.posterior?.sdLog).toBeLessThan(flat.sdLog);
        expect(got.verdict).toBe(flat.verdict);
      }),
    );
  });
});

test.each([
  [{ ...base, readingRlu: -5 }, /readingRlu/],
  [{ ...base, readingRlu: 0 }, /readingRlu/],
  [{ ...base, readingRlu: 0, bound: 'at-least' as const }, /readingRlu/],
  [{ ...base, readingRlu: 0, bound: 'at-most' as const, prior: { geometricMeanRlu: 1, sdLog: 1 } }, /readingRlu/],
  [{ ...base, cutoffRlu: Number.NaN }, /cutoffRlu/],
  [{ ...base, cv: 30 }, /^cv/],
  [{ ...base, cv: 0 }, /^cv/],
  [{ ...base, replicates: 1.5 }, /replicates/],
  [{ ...base, risk: 0.5 }, /risk/],
  [{ ...base, prior: { geometricMeanRlu: 0, sdLog: 1 } }, /prior\.geometricMeanRlu/],
  [{ ...base, prior: { geometricMeanRlu: 10, sdLog: -1 } }, /prior\.sdLog/],
] as const)('refuses %j', (input, field) => {
  expect(() => interpretReading(input)).toThrow(field);
  expect(() => interpretReading(input)).toThrow(RangeError);
});
