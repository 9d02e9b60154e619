import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { MOST_PAIRS, passingBablok } from './passingBablok.ts';

const reference = JSON.parse(readFileSync('test/reference/statistics/agreement.json', 'utf8')).cases[0];
const get = (...args: Parameters<typeof passingBablok>) => {
  const result = passingBablok(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation on the log scale, an independent program in R 4.2.2. Tolerance: 1e-12 relative.
test('two meters on the log scale', () => {
  const { meterA, meterB } = reference.dataset;
  const got = get(meterA.map(Math.log), meterB.map(Math.log));
  const want = reference.outputs.passing_bablok;
  const pairs: readonly [number | undefined, number][] = [
    [got.slope, want.slope],
    [got.intercept, want.intercept],
    [got.slopeInterval?.low, want.slope_ci95[0]],
    [got.slopeInterval?.high, want.slope_ci95[1]],
    [got.interceptInterval?.low, want.intercept_ci95[0]],
    [got.interceptInterval?.high, want.intercept_ci95[1]],
  ];
  for (const [value, expected] of pairs) expect(Math.abs((value ?? 0) / expected - 1)).toBeLessThan(1e-11);
});

describe('passingBablok', () => {
  const value = fc.oneof(fc.constantFrom(0, 1, 2), fc.integer({ min: 0, max: 30 }));
  const pairs = fc.array(fc.tuple(value, value), { minLength: 3, maxLength: 12 });

  it('is finite or says why, and its intervals hold the estimates', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const got = passingBablok(
          list.map(([x]) => x),
          list.map(([, y]) => y),
        );
        if (!got.ok) return;
        const { slope, intercept, slopeInterval, interceptInterval } = got.value;
        expect(Number.isFinite(slope) && Number.isFinite(intercept)).toBe(true);
        if (slopeInterval === null || interceptInterval === null) return;
        expect(slopeInterval.low).toBeLessThanOrEqual(slope);
        expect(slopeInterval.high).toBeGreaterThanOrEqual(slope);
        expect(interceptInterval.low).toBeLessThanOrEqual(interceptInterval.high);
      }),
    );
  });

  it('follows a change of scale of either method', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 3, maxLength: 12 }), fc.constantFrom(0.5, 2, 8), (list, factor) => {
        // Rising pairs: no slope near -1 that the scale could move across it.
        const [a, b] = [list.map((x, i) => x + 40 * i), list.map((x, i) => 2 * x + 100 * i)];
        const [plain, scaled] = [
          get(a, b),
          get(
            a,
            b.map((y) => factor * y + 3),
          ),
        ];
        expect(scaled.slope).toBeCloseTo(factor * plain.slope, 9);
        expect(scaled.intercept).toBeCloseTo(factor * plain.intercept + 3, 6);
      }),
    );
  });

  it('is not moved by one wild value', () => {
    const a = Array.from({ length: 15 }, (_, i) => i);
    const wild = a.map((x) => (x === 7 ? 1e6 : 2 * x + 1));
    expect(get(a, wild)).toMatchObject({ slope: 2, intercept: 1 });
  });

  it('says why there is no line', () => {
    expect(passingBablok([1, 2], [1, 2])).toEqual({ ok: false, reason: 'too-few' });
    expect(passingBablok([1, 1, 1], [2, 2, 2])).toEqual({ ok: false, reason: 'no-spread' });
    expect(passingBablok([1, 1, 1], [2, 3, 4])).toEqual({ ok: false, reason: 'no-line' });
    expect(passingBablok([1, 2, 3], [3, 2, 1])).toEqual({ ok: false, reason: 'no-spread' });
    const many = Array.from({ length: MOST_PAIRS + 1 }, (_, i) => i);
    expect(() => passingBablok(many, many)).toThrow(/^a must hold at most/);
  });
});
