import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { blandAltman } from './blandAltman.ts';

interface Reference {
  readonly dataset: { readonly meterA: readonly number[]; readonly meterB: readonly number[] };
  readonly outputs: { readonly bland_altman: Readonly<Record<string, number & readonly [number, number]>> };
}
const { cases }: { cases: readonly [Reference] } = JSON.parse(readFileSync('test/reference/statistics/agreement.json', 'utf8'));

const get = (...args: Parameters<typeof blandAltman>) => {
  const result = blandAltman(...args);
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation of two meters on the log scale, formulas in R 4.2.2. Tolerance: 1e-12 relative; 5e-5 for the limits and their
// standard error, where the reference takes 1.96 for 1.959964.
test('two meters on the log scale', () => {
  const [{ dataset, outputs }] = cases;
  const want = outputs.bland_altman;
  const got = get(dataset.meterA.map(Math.log), dataset.meterB.map(Math.log));
  const pairs: readonly [number, number | undefined][] = [
    [got.bias, want['bias']],
    [got.sd, want['sd']],
    [got.biasInterval.low, want['bias_ci95']?.[0]],
    [got.biasInterval.high, want['bias_ci95']?.[1]],
    [Math.exp(got.bias), want['gm_ratio']],
  ];
  const rounded: readonly [number, number | undefined][] = [
    [got.limits.low, want['loa_1.96']?.[0]],
    [got.limits.high, want['loa_1.96']?.[1]],
    [got.limitSe, want['se_loa']],
    // qt(0.975, 49)
    [(got.limits.low - got.lowerLimitInterval.low) / got.limitSe, 2.00957523712924],
    [(got.upperLimitInterval.high - got.limits.high) / got.limitSe, 2.00957523712924],
  ];
  for (const [value, expected] of pairs) expect(Math.abs(value / (expected ?? 0) - 1)).toBeLessThan(1e-12);
  for (const [value, expected] of rounded) expect(Math.abs(value / (expected ?? 0) - 1)).toBeLessThan(5e-5);
});

describe('blandAltman', () => {
  const value = fc.oneof(fc.constantFrom(0, 1, 1e6), fc.double({ min: -1e6, max: 1e6, noNaN: true }));
  const pairs = fc.array(fc.tuple(value, value), { minLength: 2, maxLength: 12 });

  it('swapping the methods mirrors everything about 0; a shift of one moves bias and limits alone', () => {
    fc.assert(
      fc.property(pairs, (list) => {
        const [a, b] = [list.map(([x]) => x), list.map(([, y]) => y)];
        const [one, other, shifted] = [
          get(a, b),
          get(b, a),
          get(
            a.map((x) => x + 8),
            b,
          ),
        ];
        const close = (x: number, y: number) => expect(Math.abs(x - y)).toBeLessThan(1e-6);
        close(one.bias, -other.bias);
        close(one.limits.low, -other.limits.high);
        close(one.upperLimitInterval.high, -other.lowerLimitInterval.low);
        close(shifted.bias, one.bias + 8);
        close(shifted.sd, one.sd);
        expect(one.biasInterval.low).toBeLessThanOrEqual(one.biasInterval.high);
      }),
    );
  });

  it('equal differences have no spread, exactly', () => {
    expect(get([0.1, 0.2, 0.3], [0.1, 0.2, 0.3])).toMatchObject({ bias: 0, sd: 0, limits: { low: 0, high: 0 } });
    expect(get([5, 5, 5], [3, 3, 3])).toMatchObject({ bias: 2, sd: 0, biasInterval: { low: 2, high: 2 } });
  });

  it('refuses one pair, and names what it cannot use', () => {
    expect(blandAltman([1], [2])).toEqual({ ok: false, reason: 'too-few' });
    expect(() => blandAltman([], [])).toThrow(/^a must hold/);
    expect(() => blandAltman([1, 2], [1])).toThrow(/^b must hold as many/);
    expect(() => blandAltman([1, Number.NaN], [1, 2])).toThrow(/^a\.1/);
    expect(() => blandAltman([1, 2], [1, Number.POSITIVE_INFINITY])).toThrow(/^b\.1/);
    expect(() => blandAltman([1, 2], [1, 3], 95)).toThrow(/^level/);
  });
});
