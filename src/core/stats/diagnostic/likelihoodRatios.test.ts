import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { likelihoodRatios } from './likelihoodRatios.ts';
import { postTestProbability } from './postTestProbability.ts';

const { table_at_youden: table, at_youden: want } = JSON.parse(readFileSync('test/reference/statistics/roc.json', 'utf8')).cases[0].outputs;

// Own seeded simulation at its Youden cut-off; formulas in R 4.2.2. Tolerance: 1e-12 relative.
test('readings at a cut-off', () => {
  const got = likelihoodRatios({ truePositive: table.TP, falseNegative: table.FN, falsePositive: table.FP, trueNegative: table.TN });
  if (!got.ok) throw new Error(got.reason);
  const { positive, negative } = got.value;
  const pairs: readonly [number | null, number][] = [
    [positive.estimate, want.lr_pos],
    [positive.low, want.lr_pos_ci[0]],
    [positive.high, want.lr_pos_ci[1]],
    [negative.estimate, want.lr_neg],
    [negative.low, want.lr_neg_ci[0]],
    [negative.high, want.lr_neg_ci[1]],
    ...(want.pretest as number[]).flatMap((before, i): [number | null, number][] => [
      [postTestProbability(before, positive.estimate ?? 0), want.post_positive[i]],
      [postTestProbability(before, negative.estimate ?? 0), want.post_negative[i]],
    ]),
  ];
  for (const [value, expected] of pairs) expect(Math.abs((value ?? 0) / expected - 1)).toBeLessThan(1e-12);
});

describe('likelihoodRatios', () => {
  const count = fc.oneof(fc.constantFrom(0, 1), fc.nat(500));

  it('swapping the results swaps the ratios; a missing width is null and never a number that is none', () => {
    fc.assert(
      fc.property(count, count, count, count, (truePositive, falseNegative, falsePositive, trueNegative) => {
        const got = likelihoodRatios({ truePositive, falseNegative, falsePositive, trueNegative });
        const swapped = likelihoodRatios({
          truePositive: falseNegative,
          falseNegative: truePositive,
          falsePositive: trueNegative,
          trueNegative: falsePositive,
        });
        if (!got.ok || !swapped.ok) {
          expect(truePositive + falseNegative === 0 || falsePositive + trueNegative === 0).toBe(true);
          return;
        }
        expect(got.value.positive).toEqual(swapped.value.negative);
        for (const { estimate, low, high } of [got.value.positive, got.value.negative]) {
          expect((low === null) === (high === null)).toBe(true);
          if (estimate !== null) expect(Number.isFinite(estimate) && estimate >= 0).toBe(true);
          if (low !== null && high !== null && estimate !== null) expect(0 < low && low <= estimate && estimate <= high).toBe(true);
        }
        expect(got.value.positive.estimate === null).toBe(falsePositive === 0);
      }),
    );
  });

  it('says which group is empty, and names the count', () => {
    const none = { truePositive: 0, falseNegative: 0, falsePositive: 0, trueNegative: 0 };
    expect(likelihoodRatios(none)).toEqual({ ok: false, reason: 'no-positives' });
    expect(likelihoodRatios({ ...none, truePositive: 1 })).toEqual({ ok: false, reason: 'no-negatives' });
    expect(() => likelihoodRatios({ ...none, falsePositive: -1 })).toThrow(/^falsePositive/);
  });
});

describe('postTestProbability', () => {
  it('a ratio of 1 changes nothing, and two tests multiply', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true })),
        fc.oneof(fc.constantFrom(1), fc.double({ min: 0.01, max: 100, noNaN: true })),
        (before, ratio) => {
          expect(postTestProbability(before, 1)).toBeCloseTo(before, 14);
          const after = postTestProbability(before, ratio);
          expect(after >= 0 && after <= 1).toBe(true);
          expect(postTestProbability(after, 3)).toBeCloseTo(postTestProbability(before, 3 * ratio), 10);
        },
      ),
    );
    expect(postTestProbability(0.4, 0)).toBe(0);
    expect(() => postTestProbability(1, 0)).toThrow(/^likelihoodRatio/);
    expect(() => postTestProbability(1.1, 1)).toThrow(/^preTestProbability/);
    expect(() => postTestProbability(0.1, -1)).toThrow(/^likelihoodRatio/);
  });
});
