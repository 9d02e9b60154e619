import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { comparePairedAucs } from './comparePairedAucs.ts';
import { delongAuc } from './delongAuc.ts';
import { outcomeTable } from './outcomeTable.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/roc.json', 'utf8')).cases[0];

// Own seeded simulation; pROC 1.18.0 for R 4.2.2 (roc.test, paired). Tolerance: 1e-10 relative.
test('reading against a score on the same people', () => {
  const { rlu, score, caries } = reference.dataset;
  const got = comparePairedAucs(
    rlu,
    score,
    caries.map((yes: number) => yes === 1),
  );
  if (!got.ok) throw new Error(got.reason);
  const { auc, second_auc, delong_paired_z, delong_paired_p, delong_cov } = reference.outputs;
  const pairs: readonly [number | null, number][] = [
    [got.value.first, auc],
    [got.value.second, second_auc],
    [got.value.z, delong_paired_z],
    [got.value.pTwoSided, delong_paired_p],
    [got.value.covariance, delong_cov],
  ];
  for (const [value, want] of pairs) expect(Math.abs((value ?? 0) / want - 1)).toBeLessThan(1e-10);
});

describe('comparePairedAucs', () => {
  const value = fc.oneof(fc.constantFrom(0, 40), fc.integer({ min: 0, max: 8 }));
  const people = fc.array(fc.tuple(value, value, fc.boolean()), { minLength: 4, maxLength: 20 });

  it('agrees with the unpaired area of each measure, and mirrors', () => {
    fc.assert(
      fc.property(people, (list) => {
        const [first, second, positive] = [list.map(([x]) => x), list.map(([, y]) => y), list.map(([, , p]) => p)];
        const [got, swapped] = [comparePairedAucs(first, second, positive), comparePairedAucs(second, first, positive)];
        const count = positive.filter(Boolean).length;
        expect(got.ok).toBe(count >= 2 && list.length - count >= 2);
        if (!got.ok || !swapped.ok) return;
        const of = (yes: boolean) => first.filter((_, i) => positive[i] === yes);
        const alone = delongAuc(outcomeTable(of(true), of(false)));
        expect(got.value.first).toBeCloseTo(alone.ok ? alone.value.auc : Number.NaN, 12);
        expect(got.value.difference).toBeCloseTo(-swapped.value.difference, 12);
        expect(got.value.se).toBeCloseTo(swapped.value.se, 10);
        if (got.value.pTwoSided !== null) expect(got.value.pTwoSided >= 0 && got.value.pTwoSided <= 1).toBe(true);
      }),
    );
  });

  it('the same measure twice leaves nothing to test', () => {
    const values = [1, 5, 2, 4, 3];
    expect(comparePairedAucs(values, values, [true, true, false, false, false])).toMatchObject({
      ok: true,
      value: { difference: 0, se: 0, z: null, pTwoSided: null, interval: null },
    });
  });

  it('says why there is none, and names the value', () => {
    expect(comparePairedAucs([1, 2, 3], [1, 2, 3], [true, false, false])).toEqual({ ok: false, reason: 'too-few' });
    expect(() => comparePairedAucs([1, 2], [1], [true, false])).toThrow(/^second must/);
    expect(() => comparePairedAucs([1, 2], [1, 2], [true])).toThrow(/^isPositive must/);
    expect(() => comparePairedAucs([1, 2], [1, Number.NaN], [true, false])).toThrow(/^second\.1/);
  });
});
