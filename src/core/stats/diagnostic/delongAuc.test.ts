import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { delongAuc } from './delongAuc.ts';
import { outcomeTable } from './outcomeTable.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/roc.json', 'utf8')).cases[0];
const { rlu, caries } = reference.dataset as { readonly rlu: readonly number[]; readonly caries: readonly number[] };
const withCaries = (yes: number) => rlu.filter((_, i) => caries[i] === yes);

// Own seeded simulation; pROC 1.18.0 for R 4.2.2. Tolerance: 1e-12 relative.
test('readings of people with and without a lesion', () => {
  const got = delongAuc(outcomeTable(withCaries(1), withCaries(0)));
  if (!got.ok) throw new Error(got.reason);
  const { auc, delong_se, delong_ci95 } = reference.outputs;
  const pairs: readonly [number | null | undefined, number][] = [
    [got.value.auc, auc],
    [got.value.se, delong_se],
    [got.value.interval?.low, delong_ci95[0]],
    [got.value.interval?.high, delong_ci95[1]],
  ];
  for (const [value, want] of pairs) expect(Math.abs((value ?? 0) / want - 1)).toBeLessThan(1e-12);
});

/** The definition: every case with the outcome against every case without. */
function byAllPairs(positives: readonly number[], negatives: readonly number[]) {
  const wins = (x: number, y: number) => (x > y ? 1 : x === y ? 0.5 : 0);
  const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;
  const ofPositives = positives.map((x) => mean(negatives.map((y) => wins(x, y))));
  const ofNegatives = negatives.map((y) => mean(positives.map((x) => wins(x, y))));
  const auc = mean(ofPositives);
  const part = (list: readonly number[]) => list.reduce((sum, x) => sum + (x - auc) ** 2, 0) / (list.length - 1) / list.length;
  return { auc, variance: part(ofPositives) + part(ofNegatives) };
}

describe('delongAuc', () => {
  // Few distinct values, so that ties are the rule.
  const value = fc.oneof(fc.constantFrom(0, -0, 40, 60_000), fc.integer({ min: 0, max: 6 }));
  const group = fc.array(value, { minLength: 2, maxLength: 12 });

  it('is the definition by all pairs, and mirrors when the groups are swapped', () => {
    fc.assert(
      fc.property(group, group, (positives, negatives) => {
        const [got, swapped] = [delongAuc(outcomeTable(positives, negatives)), delongAuc(outcomeTable(negatives, positives))];
        const want = byAllPairs(positives, negatives);
        if (!got.ok || !swapped.ok) throw new Error('both groups have cases');
        expect(got.value.auc).toBeCloseTo(want.auc, 12);
        expect((got.value.se ?? Number.NaN) ** 2).toBeCloseTo(want.variance, 12);
        expect(got.value.auc + swapped.value.auc).toBeCloseTo(1, 12);
        const { interval, auc } = got.value;
        if (interval !== null) expect(0 <= interval.low && interval.low <= auc && auc <= interval.high && interval.high <= 1).toBe(true);
      }),
    );
  });

  it('says what a group of nobody or of one leaves open', () => {
    expect(delongAuc(outcomeTable([], [1, 2]))).toEqual({ ok: false, reason: 'no-positives' });
    expect(delongAuc(outcomeTable([1, 2], []))).toEqual({ ok: false, reason: 'no-negatives' });
    expect(delongAuc(outcomeTable([2], [1, 3]))).toEqual({ ok: true, value: { auc: 0.5, se: null, interval: null } });
    expect(delongAuc(outcomeTable([3, 4], [1, 2]))).toEqual({ ok: true, value: { auc: 1, se: 0, interval: null } });
    expect(delongAuc(outcomeTable([0.1, 0.1], [0.1, 0.1, 0.1]))).toEqual({ ok: true, value: { auc: 0.5, se: 0, interval: null } });
    expect(() => outcomeTable([1, Number.NaN], [1])).toThrow(/^positives\.1/);
    expect(() => outcomeTable([1], [Number.POSITIVE_INFINITY])).toThrow(/^negatives\.0/);
  });
});
