import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { demingRegression } from './demingRegression.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/agreement.json', 'utf8')).cases[0];
const get = (...args: Parameters<typeof demingRegression>) => {
  const result = demingRegression(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation on the log scale, formulas in R 4.2.2. Tolerance: 1e-10 relative.
test.each([1, 1.5])('two meters on the log scale, error ratio %d', (errorRatio) => {
  const { meterA, meterB } = reference.dataset;
  const got = get(meterA.map(Math.log), meterB.map(Math.log), { errorRatio });
  const want = reference.outputs[`deming_${errorRatio}`];
  const pairs: readonly [number | null | undefined, number][] = [
    [got.slope, want.slope],
    [got.intercept, want.intercept],
    [got.interceptSe, want.se_jackknife[0]],
    [got.slopeSe, want.se_jackknife[1]],
    [got.slopeInterval?.low, want.slope_ci95[0]],
    [got.interceptInterval?.high, want.intercept_ci95[1]],
  ];
  for (const [value, expected] of pairs) expect(Math.abs((value ?? 0) / expected - 1)).toBeLessThan(1e-10);
});

describe('demingRegression', () => {
  const value = fc.oneof(fc.constantFrom(0, 1, 2), fc.double({ min: -50, max: 50, noNaN: true }));
  const pairs = fc.array(fc.tuple(value, value), { minLength: 2, maxLength: 10 });

  it('is finite or says why; swapping the methods inverts the slope', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [a, b] = [list.map(([x]) => x), list.map(([, y]) => y)];
        const [one, other] = [demingRegression(a, b), demingRegression(b, a)];
        if (!one.ok) return;
        for (const part of Object.values(one.value)) if (typeof part === 'number') expect(Number.isFinite(part)).toBe(true);
        if (other.ok && Math.abs(one.value.slope) > 1e-6 && Math.abs(one.value.slope) < 1e6)
          expect(one.value.slope * other.value.slope).toBeCloseTo(1, 6);
      }),
    );
  });

  it('finds the line without error, steep, flat and falling', () => {
    for (const slope of [1e-8, 0.5, 1, 3, 1e8, -2]) {
      const a = [1, 2, 4, 7, 11];
      const got = get(
        a,
        a.map((x) => 5 + slope * x),
      );
      expect(got.slope / slope).toBeCloseTo(1, 6);
      expect((got.slopeSe ?? 1) / Math.abs(slope)).toBeLessThan(1e-5);
    }
    expect(get([1, 2, 3], [4, 4, 4])).toMatchObject({ slope: 0, intercept: 4 });
  });

  it('says why there is no line', () => {
    expect(demingRegression([1], [1])).toEqual({ ok: false, reason: 'too-few' });
    expect(demingRegression([0.1, 0.1, 0.1], [2, 2, 2])).toEqual({ ok: false, reason: 'no-spread' });
    expect(demingRegression([1, 1, 1], [2, 3, 4])).toEqual({ ok: false, reason: 'no-line' });
    expect(demingRegression([1, 1, -1, -1], [1, -1, 1, -1])).toEqual({ ok: false, reason: 'no-line' });
    // Only one pair differs: without it there is no line, hence no standard error, whatever rounding leaves of the sums.
    for (let n = 3; n < 20; n++) {
      const [a, b] = [new Array<number>(n).fill(0.1), new Array<number>(n).fill(7)];
      [a[n - 1], b[n - 1]] = [0.7, 7.3];
      expect(get(a, b)).toMatchObject({ slopeSe: null, slopeInterval: null });
    }
    expect(get([0, 1], [0, 2])).toMatchObject({ slope: 2, slopeInterval: null });
    expect(() => demingRegression([1, 2], [1, 2], { errorRatio: 0 })).toThrow(/^errorRatio/);
  });
});
