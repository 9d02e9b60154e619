import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { runCalculator } from '../calculator.ts';
import { findCalculator } from '../index.ts';

const run = (name: string, input: unknown) => {
  const calculator = findCalculator(name);
  if (calculator === undefined) throw new Error(`no calculator ${name}`);
  return { calculator, result: runCalculator(calculator, input) };
};

/** Half of the numbers stand on the edges: none, one, all alike. */
const value = fc.oneof(fc.constantFrom(0, 1, 1, 40), fc.integer({ min: 0, max: 60_000 }));
const size = fc.oneof(fc.constantFrom(2, 3), fc.integer({ min: 2, max: 8 }));
const count = fc.oneof(fc.constantFrom(0, 0, 1), fc.nat(30));
const grid = <T>(cell: fc.Arbitrary<T>, rows: fc.Arbitrary<number>, columns: fc.Arbitrary<number>) =>
  fc.tuple(rows, columns).chain(([r, c]) => fc.array(fc.array(cell, { minLength: c, maxLength: c }), { minLength: r, maxLength: r }));

const inputs: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  'method-agreement': size.chain((n) => {
    const list = fc.array(value, { minLength: n, maxLength: n });
    return fc.record({ a: list, b: list });
  }),
  'cutoff-study': fc.record({
    cases: fc.array(fc.record({ value, positive: fc.boolean() }), { minLength: 1, maxLength: 12 }),
    bootstrap: fc.constantFrom({ resamples: 20 }, { resamples: 3, seed: 7 }),
    curve: fc.boolean(),
  }),
  'diagnostic-table': fc.record({
    truePositive: count,
    falseNegative: count,
    falsePositive: count,
    trueNegative: count,
    preTestProbability: fc.constantFrom(0, 0.3, 1),
  }),
  'rater-agreement': fc
    .integer({ min: 2, max: 4 })
    .chain((k) =>
      fc.record({ table: grid(count, fc.constant(k), fc.constant(k)), weights: fc.constantFrom('none', 'linear', 'quadratic') }),
    ),
  'rater-agreement-many': fc
    .array(fc.constantFrom([3, 0, 0], [0, 3, 0], [1, 1, 1], [2, 0, 1]), { minLength: 1, maxLength: 6 })
    .map((counts) => ({ counts })),
  'rater-alpha': fc.record({
    ratings: grid(fc.oneof(fc.constantFrom(null, 0, 0), fc.nat(4)), fc.constantFrom(2, 3), size),
    metric: fc.constantFrom('nominal', 'ordinal', 'interval', 'ratio'),
  }),
  'rater-icc': grid(fc.oneof(fc.constantFrom(0, 0, 1), fc.nat(20)), size, fc.constantFrom(2, 3)).map((matrix) => ({ matrix })),
};

test.each(Object.entries(inputs))('%s answers every proper input with an output that fits its own schema', (name, arbitrary) => {
  fc.assert(
    fc.property(arbitrary, (input) => {
      const { calculator, result } = run(name, input);
      expect(result).toMatchObject({ ok: true });
      if (result.ok) expect(calculator.output.safeParse(result.output).error).toBe(undefined);
    }),
    { numRuns: 50 },
  );
});

test.each([
  ['method-agreement', { a: [1], b: [1] }, 'a'],
  ['method-agreement', { a: [1, 2], b: [1, 2, 3] }, 'b'],
  ['method-agreement', { a: [1, 0], b: [1, 2], log: true }, 'a.1'],
  ['method-agreement', { a: [1, 2], b: [1, 2], scale: 'log' }, 'scale'],
  ['cutoff-study', { cases: [] }, 'cases'],
  ['cutoff-study', { cases: [{ value: 1, positive: 1 }] }, 'cases.0.positive'],
  ['cutoff-study', { cases: [{ value: 1, positive: true }], bootstrap: { resamples: 0 } }, 'bootstrap.resamples'],
  ['diagnostic-table', { truePositive: 1.5, falseNegative: 1, falsePositive: 1, trueNegative: 1 }, 'truePositive'],
  ['diagnostic-table', { truePositive: 1, falseNegative: 1, falsePositive: 1 }, 'trueNegative'],
  [
    'rater-agreement',
    {
      table: [
        [1, 2, 3],
        [1, 2, 3],
      ],
    },
    'table.0',
  ],
  [
    'rater-agreement',
    {
      table: [
        [1, 2],
        [1, -2],
      ],
    },
    'table.1.1',
  ],
  [
    'rater-agreement-many',
    {
      counts: [
        [3, 0],
        [2, 0],
      ],
    },
    'counts.1',
  ],
  ['rater-alpha', { ratings: [[1, 2]], metric: 'nominal' }, 'ratings'],
  ['rater-alpha', { ratings: [[1, 2], [1]], metric: 'nominal' }, 'ratings.1'],
  [
    'rater-alpha',
    {
      ratings: [
        [1, -2],
        [1, 2],
      ],
      metric: 'ratio',
    },
    'ratings.0.1',
  ],
  [
    'rater-icc',
    {
      matrix: [
        [1, 2],
        [1, null],
      ],
    },
    'matrix.1.1',
  ],
])('%s %j: INPUT_INVALID at %s', (name, input, path) => {
  expect(run(name, input).result).toMatchObject({ ok: false, error: { code: 'INPUT_INVALID', path } });
});

describe('what is not defined has its reason', () => {
  test.each([
    [
      'method-agreement',
      { a: [5, 5, 5], b: [5, 5, 5] },
      {
        blandAltman: { sd: 0, exactLowerLimitInterval: null },
        concordance: null,
        deming: null,
        passingBablok: null,
        notDefined: { concordance: 'no-spread', deming: 'no-spread', passingBablok: 'no-spread' },
      },
    ],
    [
      'method-agreement',
      { a: [1, 2], b: [1, 3] },
      { passingBablok: null, notDefined: { concordance: null, deming: null, passingBablok: 'too-few' } },
    ],
    [
      'cutoff-study',
      {
        cases: [
          { value: 1, positive: true },
          { value: 2, positive: true },
        ],
      },
      { auc: null, youden: null, notDefined: 'no-negatives' },
    ],
    [
      'cutoff-study',
      {
        cases: [
          { value: 3, positive: true },
          { value: 2, positive: false },
          { value: 1, positive: false },
        ],
      },
      { auc: 1, aucSe: null, aucInterval: null, intervalNotDefined: 'one-positive', youden: { cutoff: 3 }, notDefined: null },
    ],
    [
      'rater-agreement',
      {
        table: [
          [0, 0],
          [0, 4],
        ],
      },
      { kappa: null, se: null, notDefined: 'one-category' },
    ],
    ['rater-agreement-many', { counts: [[3, 0]] }, { kappa: null, notDefined: 'too-few-units' }],
    [
      'rater-alpha',
      {
        ratings: [
          [1, null],
          [null, 1],
        ],
        metric: 'ordinal',
      },
      { alpha: null, notDefined: 'no-pairs' },
    ],
    [
      'rater-icc',
      {
        matrix: [
          [2, 2],
          [2, 2],
        ],
      },
      { icc1: null, icc3k: null, intervals: null, notDefined: 'no-spread' },
    ],
  ])('%s %j', (name, input, output) => {
    expect(run(name, input).result).toMatchObject({ ok: true, output });
  });

  test.each([
    [
      'cutoff-study',
      {
        cases: [4, 3].flatMap((value) => [
          { value, positive: true },
          { value: value - 2, positive: false },
        ]),
      },
      { aucSe: 0, intervalNotDefined: 'no-width' },
    ],
    [
      'cutoff-study',
      { cases: [1, 2].map((value) => ({ value, positive: true })).concat({ value: 1, positive: false }) },
      { intervalNotDefined: 'one-negative' },
    ],
    [
      'rater-agreement',
      {
        table: [
          [4, 0],
          [0, 4],
        ],
      },
      { kappa: 1, interval: null, intervalNotDefined: 'no-width' },
    ],
    [
      'rater-agreement',
      {
        table: [
          [4, 1],
          [0, 4],
        ],
      },
      { intervalNotDefined: null },
    ],
  ])('the missing interval of %s %j', (name, input, output) => {
    expect(run(name, input).result).toMatchObject({ ok: true, output });
  });

  it('diagnostic-table says it in a sentence for each part', () => {
    const { result } = run('diagnostic-table', {
      truePositive: 0,
      falseNegative: 20,
      falsePositive: 0,
      trueNegative: 5,
      preTestProbability: 0.1,
    });
    expect(result).toMatchObject({
      ok: true,
      output: {
        sensitivity: { estimate: 0, low: 0 },
        positivePredictive: null,
        likelihoodRatioPositive: { estimate: null },
        likelihoodRatioNegative: { estimate: 1, low: null },
        postTestPositive: null,
      },
    });
    expect(result.ok && result.output).toHaveProperty('notDefined.length', 3);
  });
});

it('method-agreement on the log scale is about ratios', () => {
  expect(run('method-agreement', { a: [1, 0], b: [1, 2], log: true }).result).toMatchObject({
    error: { message: expect.stringMatching(/above 0/) },
  });
  const a = [100, 220, 410, 900];
  const double = run('method-agreement', { a: a.map((x) => 2 * x), b: a, log: true }).result;
  expect(double.ok && (double.output as { ratio: { geometricMean: number } }).ratio.geometricMean).toBeCloseTo(2, 12);
});
