import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type KnownNoiseInput, knownNoiseFit, type NoisyValue } from './knownNoiseFit.ts';

function fitted(input: KnownNoiseInput) {
  const got = knownNoiseFit(input);
  if (!got.ok) throw new Error(got.reason);
  return got.value;
}
const exact = (value: number, fixed: readonly number[], effects: readonly number[] = []): NoisyValue => ({
  value,
  bound: 'exact',
  fixed,
  effects,
});

test('without bounds and effects, the mean and its variance', () => {
  const got = fitted({ values: [1, 2, 6].map((y) => exact(y, [1])), noiseSd: 0.5, effectVariances: [] });
  expect(got.coefficients[0]).toBeCloseTo(3, 13);
  expect(got.covariance[0]?.[0]).toBeCloseTo(0.25 / 3, 14);
  expect(got.chiSquare).toBeCloseTo((4 + 1 + 9) / 0.25, 10);
});

// Two values of one pair of hands, one of another: means 2 and 5 with variances 0.5/2 + 1 and 0.5 + 1, weighted by them. By hand.
test('values that share an effect count less', () => {
  const values = [exact(1, [1], [0]), exact(3, [1], [0]), exact(5, [1], [1])];
  const got = fitted({ values, noiseSd: Math.sqrt(0.5), effectVariances: [1, 1] });
  const [a, b] = [1 / 1.25, 1 / 1.5];
  expect(got.coefficients[0]).toBeCloseTo((2 * a + 5 * b) / (a + b), 12);
  expect(got.covariance[0]?.[0]).toBeCloseTo(1 / (a + b), 12);
  expect(got.chiSquare).toBeCloseTo(2 / 0.5 + 9 / (1.25 + 1.5), 11);
});

// Likelihood with a known sd maximised in R 4.2.2 (optim, Newton steps to the end, optimHess): readings 9800, 5200, at most 40, 7300,
// at least 60000 at -0.5, -0.3, 0, 0.2, 0.5, sd 0.55. Tolerance: the coefficients 1e-10; the variances 1e-7, by finite differences there.
describe('bounds, against R', () => {
  const times = [-0.5, -0.3, 0, 0.2, 0.5];
  const bounds = ['exact', 'exact', 'at-most', 'exact', 'at-least'] as const;
  const rlus = [9800, 5200, 40, 7300, 60_000];
  const values = (fixedOf: (t: number) => readonly number[]) =>
    rlus.map((rlu, i) => ({ value: Math.log(rlu), bound: bounds[i] ?? 'exact', fixed: fixedOf(times[i] ?? 0), effects: [] }));

  test('a mean', () => {
    const got = fitted({ values: values(() => [1]), noiseSd: 0.55, effectVariances: [] });
    expect(Math.abs((got.coefficients[0] ?? 0) - 8.27445603702)).toBeLessThan(1e-10);
    expect(Math.abs((got.covariance[0]?.[0] ?? 0) - 0.0610668819)).toBeLessThan(1e-7);
  });

  test('a line', () => {
    const got = fitted({ values: values((t) => [1, t]), noiseSd: 0.55, effectVariances: [] });
    expect(Math.abs((got.coefficients[0] ?? 0) - 8.3144816346)).toBeLessThan(1e-10);
    expect(Math.abs((got.coefficients[1] ?? 0) - 1.61924709563)).toBeLessThan(1e-10);
    const expected = [0.0617259899, 0.0129918107, 0.0129918107, 0.4944027296];
    got.covariance.flat().forEach((v, i) => {
      expect(Math.abs(v - (expected[i] ?? 9))).toBeLessThan(1e-7);
    });
  });
});

test.each<[string, NoisyValue[]]>([
  ['a slope at one time only', [exact(1, [1, 2]), exact(2, [1, 2])]],
  ['nothing at all', [exact(1, [0])]],
])('%s is not determined', (_, values) => {
  expect(knownNoiseFit({ values, noiseSd: 1, effectVariances: [] })).toEqual({ ok: false, reason: 'not-determined' });
});

test.each<[Partial<KnownNoiseInput>, RegExp]>([
  [{ values: [] }, /values/],
  [{ values: [exact(Number.NaN, [1])] }, /values/],
  [{ values: [exact(1, [1]), exact(1, [1, 2])] }, /fixed/],
  [{ values: [exact(1, [1], [0])] }, /effects/],
  [{ noiseSd: 0 }, /noiseSd/],
  [{ noiseSd: Number.NaN }, /noiseSd/],
  [{ effectVariances: [0] }, /effectVariances/],
])('refuses %j by name', (part, message) => {
  expect(() => knownNoiseFit({ values: [exact(1, [1])], noiseSd: 1, effectVariances: [], ...part })).toThrow(message);
});

/** Generalised least squares by its closed form, V = noise + shared effects, inverted by Gauss and Jordan. */
function byClosedForm({ values, noiseSd, effectVariances }: KnownNoiseInput) {
  const v = values.map((a) =>
    values.map(
      (b) => (a === b ? noiseSd ** 2 : 0) + a.effects.reduce((s, e) => s + (b.effects.includes(e) ? (effectVariances[e] ?? 0) : 0), 0),
    ),
  );
  const inverse = inverted(v);
  const x = values.map(({ fixed }) => fixed);
  const xt = transposed(x);
  const covariance = inverted(times(times(xt, inverse), x));
  const coefficients = times(
    times(times(covariance, xt), inverse),
    values.map(({ value }) => [value]),
  ).map(([b = 0]) => b);
  return { coefficients, covariance };
}
const transposed = (a: readonly (readonly number[])[]): number[][] => (a[0] ?? []).map((_, j) => a.map((row) => row[j] ?? 0));
const times = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number[][] =>
  a.map((row) => (b[0] ?? []).map((_, j) => row.reduce((sum, r, k) => sum + r * (b[k]?.[j] ?? 0), 0)));
function inverted(a: readonly (readonly number[])[]): number[][] {
  const rows = a.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < rows.length; i++) {
    const best = rows.slice(i).reduce((top, row, k) => (Math.abs(row[i] ?? 0) > Math.abs(rows[top]?.[i] ?? 0) ? i + k : top), i);
    [rows[i], rows[best]] = [rows[best] ?? [], rows[i] ?? []];
    const pivot = rows[i]?.[i] ?? 0;
    rows[i] = (rows[i] ?? []).map((x) => x / pivot);
    rows.forEach((row, k) => {
      if (k !== i) rows[k] = row.map((x, j) => x - (row[i] ?? 0) * (rows[i]?.[j] ?? 0));
    });
  }
  return rows.map((row) => row.slice(a.length));
}

const logs = fc.oneof(fc.constantFrom(0, Math.log(40), Math.log(60_000)), fc.double({ min: 0, max: 11, noNaN: true }));
const swabs = fc.array(fc.record({ value: logs, hand: fc.nat(2), lot: fc.nat(1) }), { minLength: 3, maxLength: 8 });
const sds = fc.oneof(fc.constantFrom(0.05, 2), fc.double({ min: 0.1, max: 1, noNaN: true }));
const variances = fc.oneof(fc.constantFrom(1e-4, 4), fc.double({ min: 0.001, max: 0.5, noNaN: true }));

test('is generalised least squares where nothing is a bound', () => {
  fc.assert(
    fc.property(swabs, sds, variances, variances, (list, noiseSd, hands, lots) => {
      const values = list.map(({ value, hand, lot }, i) => exact(value, [1, i / list.length - 0.5], [hand, 3 + lot]));
      const input = { values, noiseSd, effectVariances: [hands, hands, hands, lots, lots] };
      const [got, closed] = [fitted(input), byClosedForm(input)];
      got.coefficients.forEach((b, i) => {
        expect(Math.abs(b - (closed.coefficients[i] ?? Number.NaN))).toBeLessThan(1e-8);
      });
      got.covariance.flat().forEach((c, i) => {
        expect(Math.abs(c / (closed.covariance.flat()[i] ?? Number.NaN) - 1) < 1e-6 || Math.abs(c) < 1e-9).toBe(true);
      });
    }),
  );
});

test('a bound only pulls to its side, less than the number itself would, and never narrows more', () => {
  fc.assert(
    fc.property(fc.array(logs, { minLength: 1, maxLength: 6 }), logs, sds, (list, last, noiseSd) => {
      const meanOf = (bound: NoisyValue['bound'] | undefined) => {
        const values = list.map((y) => exact(y, [1]));
        const all = bound === undefined ? values : [...values, { ...exact(last, [1]), bound }];
        const { coefficients, covariance } = fitted({ values: all, noiseSd, effectVariances: [] });
        return { mean: coefficients[0] ?? Number.NaN, variance: covariance[0]?.[0] ?? Number.NaN };
      };
      const [without, exactly, atMost, atLeast] = [meanOf(undefined), meanOf('exact'), meanOf('at-most'), meanOf('at-least')];
      const slack = 1e-9;
      expect(atMost.mean).toBeLessThanOrEqual(without.mean + slack);
      expect(atLeast.mean).toBeGreaterThanOrEqual(without.mean - slack);
      expect(Math.min(atMost.variance, atLeast.variance)).toBeGreaterThanOrEqual(exactly.variance * (1 - slack));
      expect(Math.max(atMost.variance, atLeast.variance)).toBeLessThanOrEqual(without.variance * (1 + slack));
    }),
  );
});
