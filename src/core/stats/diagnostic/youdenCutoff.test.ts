import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { outcomeTable } from './outcomeTable.ts';
import { rocCurve } from './rocCurve.ts';
import { youdenCutoff } from './youdenCutoff.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/roc.json', 'utf8')).cases[0];
const { rlu, caries } = reference.dataset as { readonly rlu: readonly number[]; readonly caries: readonly number[] };
const withCaries = (yes: number) => rlu.filter((_, i) => caries[i] === yes);

// Own seeded simulation; R 4.2.2. Tolerance: 1e-12.
test('readings of people with and without a lesion', () => {
  const got = youdenCutoff(outcomeTable(withCaries(1), withCaries(0)));
  if (!got.ok) throw new Error(got.reason);
  const { youden_cutoff_ge, youden_J, youden_ties, at_youden } = reference.outputs;
  expect(got.value.cutoff).toBe(youden_cutoff_ge);
  expect(got.value.tied).toEqual(youden_ties);
  expect(got.value.index).toBeCloseTo(youden_J, 12);
  expect(got.value.sensitivity).toBeCloseTo(at_youden.sens, 12);
  expect(got.value.specificity).toBeCloseTo(at_youden.spec, 12);
});

describe('youdenCutoff and rocCurve', () => {
  const value = fc.oneof(fc.constantFrom(0, 40), fc.integer({ min: 0, max: 8 }));
  const group = fc.array(value, { minLength: 1, maxLength: 12 });

  it('the cut-off is the best of all observed values by counting, the lowest of those that tie', () => {
    fc.assert(
      fc.property(group, group, (positives, negatives) => {
        const got = youdenCutoff(outcomeTable(positives, negatives));
        if (!got.ok) throw new Error(got.reason);
        // Counted and compared in whole numbers: thirds and sevenths would tie by rounding alone.
        const score = (cutoff: number) =>
          positives.filter((x) => x >= cutoff).length * negatives.length - negatives.filter((y) => y >= cutoff).length * positives.length;
        const observed = [...new Set([...positives, ...negatives])].sort((a, b) => a - b);
        const top = Math.max(...observed.map(score));
        const tied = observed.filter((cutoff) => score(cutoff) === top);
        expect(got.value.tied).toEqual(tied);
        expect(got.value.cutoff).toBe(tied[0]);
        expect(got.value.index).toBeCloseTo(got.value.sensitivity + got.value.specificity - 1, 12);
        expect(got.value.index).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('the curve runs from nobody to everybody, never back, over the area', () => {
    fc.assert(
      fc.property(group, group, (positives, negatives) => {
        const curve = rocCurve(outcomeTable(positives, negatives));
        if (!curve.ok) throw new Error(curve.reason);
        expect(curve.value[0]).toEqual({ cutoff: null, sensitivity: 0, specificity: 1 });
        expect(curve.value.at(-1)).toMatchObject({ sensitivity: 1, specificity: 0 });
        let area = 0;
        curve.value.slice(1).forEach((point, i) => {
          const before = curve.value[i] ?? point;
          expect(point.sensitivity).toBeGreaterThanOrEqual(before.sensitivity);
          expect(point.specificity).toBeLessThanOrEqual(before.specificity);
          area += ((point.sensitivity + before.sensitivity) / 2) * (before.specificity - point.specificity);
        });
        const wins = positives.flatMap((x) => negatives.map((y) => (x > y ? 1 : x === y ? 0.5 : 0) as number));
        expect(area).toBeCloseTo(wins.reduce((a, b) => a + b, 0) / wins.length, 12);
      }),
    );
  });

  it('says which group is empty', () => {
    expect(youdenCutoff(outcomeTable([], [1]))).toEqual({ ok: false, reason: 'no-positives' });
    expect(rocCurve(outcomeTable([1], []))).toEqual({ ok: false, reason: 'no-negatives' });
  });
});
