import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ICC_FORMS, intraclassCorrelation } from './intraclassCorrelation.ts';

const { cases } = JSON.parse(readFileSync('test/reference/statistics/raters.json', 'utf8'));
const reference = cases.find(({ id }: { id: string }) => id === 'sim_icc');

// Own seeded simulation, 40 units, 5 raters; psych 2.2.9 for R 4.2.2. Tolerance: 1e-12 relative, intervals 1e-10.
test.each(ICC_FORMS.map((form, i) => [form, i] as const))('%s', (form, i) => {
  const got = intraclassCorrelation(reference.dataset.matrix);
  if (!got.ok) throw new Error(got.reason);
  const { psych_icc, psych_lower, psych_upper } = reference.outputs;
  expect(Math.abs((got.value.values[form] ?? 0) / psych_icc[i] - 1)).toBeLessThan(1e-12);
  expect(Math.abs((got.value.intervals[form]?.low ?? 0) / psych_lower[i] - 1)).toBeLessThan(1e-10);
  expect(Math.abs((got.value.intervals[form]?.high ?? 0) / psych_upper[i] - 1)).toBeLessThan(1e-10);
});

describe('intraclassCorrelation', () => {
  const value = fc.oneof(fc.constantFrom(0, 0, 1), fc.integer({ min: -20, max: 20 }));
  const matrices = fc
    .integer({ min: 2, max: 4 })
    .chain((k) => fc.array(fc.array(value, { minLength: k, maxLength: k }), { minLength: 2, maxLength: 8 }));

  it('is finite or null, at most 1, and the same on another scale', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const got = intraclassCorrelation(matrix);
        const moved = intraclassCorrelation(matrix.map((row) => row.map((x) => 1000 - 8 * x)));
        expect(moved.ok).toBe(got.ok);
        if (!got.ok || !moved.ok) return;
        for (const form of ICC_FORMS) {
          const [icc, interval] = [got.value.values[form], got.value.intervals[form]];
          if (icc === null) continue;
          expect(Number.isFinite(icc) && icc <= 1 + 1e-12).toBe(true);
          expect(Math.abs(icc - (moved.value.values[form] ?? Number.NaN))).toBeLessThan(1e-8 * Math.max(1, Math.abs(icc)));
          if (interval !== null) expect(Number.isFinite(interval.low) && Number.isFinite(interval.high)).toBe(true);
          if (interval !== null && form.startsWith('icc1')) {
            expect(interval.low).toBeLessThanOrEqual(icc + 1e-12);
            expect(interval.high).toBeGreaterThanOrEqual(icc - 1e-12);
          }
        }
      }),
    );
  });

  it('raters that differ by a constant agree in the third form and not in the second', () => {
    const got = intraclassCorrelation([
      [1, 11],
      [2, 12],
      [5, 15],
    ]);
    expect(got).toMatchObject({ ok: true, value: { values: { icc3: 1, icc3k: 1 }, intervals: { icc3: null, icc2: null } } });
    expect(got.ok && got.value.values.icc2).toBeLessThan(0.2);
  });

  it('units that are all alike leave the mean forms open', () => {
    expect(
      intraclassCorrelation([
        [1, 2],
        [2, 1],
      ]),
    ).toMatchObject({ ok: true, value: { values: { icc1: -1, icc1k: null }, intervals: { icc1: null } } });
  });

  it('says why there is none, and names the row', () => {
    expect(
      intraclassCorrelation([
        [0.1, 0.1],
        [0.1, 0.1],
      ]),
    ).toEqual({ ok: false, reason: 'no-spread' });
    expect(() => intraclassCorrelation([[1, 2]])).toThrow(/^matrix must/);
    expect(() => intraclassCorrelation([[1], [2]])).toThrow(/^matrix\.0 must/);
    expect(() =>
      intraclassCorrelation([
        [1, 2],
        [1, 2, 3],
      ]),
    ).toThrow(/^matrix\.1 must/);
    expect(() =>
      intraclassCorrelation([
        [1, 2],
        [1, Number.NaN],
      ]),
    ).toThrow(/^matrix\.1\.1/);
  });
});
