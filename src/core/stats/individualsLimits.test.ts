import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { individualsLimits } from './individualsLimits.ts';

interface Chart {
  readonly center: number;
  readonly mr_bar: number;
  readonly sigma_mr: number;
  readonly ucl: number;
  readonly lcl: number;
  readonly ucl_mr: number;
}
const { series }: { series: { rlu: readonly number[]; individuals: Record<'first20' | 'all', Chart> } } = JSON.parse(
  readFileSync('test/reference/statistics/control.json', 'utf8'),
);

// Own seeded simulation of control readings, formulas in R 4.2.2 (test/reference/statistics/control.json). Tolerance: 1e-12 relative,
// 1e-5 for the limit of the moving range, whose printed constant is rounded there.
test.each([
  { name: 'first20' as const, count: 20 },
  { name: 'all' as const, count: 60 },
])('limits of $name', ({ name, count }) => {
  const got = individualsLimits(series.rlu.slice(0, count).map(Math.log));
  const want = series.individuals[name];
  expect(got).toMatchObject({ ok: true });
  if (!got.ok) return;
  expect(got.value.mean / want.center - 1).toBeCloseTo(0, 12);
  expect(got.value.meanMovingRange / want.mr_bar - 1).toBeCloseTo(0, 12);
  expect(got.value.sd / want.sigma_mr - 1).toBeCloseTo(0, 12);
  expect(got.value.limits.high / want.ucl - 1).toBeCloseTo(0, 12);
  expect(got.value.limits.low / want.lcl - 1).toBeCloseTo(0, 12);
  expect(Math.abs(got.value.movingRangeLimit / want.ucl_mr - 1)).toBeLessThan(1e-5);
});

test('no limits from one value, or from values that are all the same', () => {
  expect(individualsLimits([])).toEqual({ ok: false, reason: 'too-few-values' });
  expect(individualsLimits([3])).toEqual({ ok: false, reason: 'too-few-values' });
  expect(individualsLimits([3, 3, 3])).toEqual({ ok: false, reason: 'no-spread' });
  expect(() => individualsLimits([3, Number.NaN])).toThrow('values.1');
});

it('moves with the values: another unit, another zero', () => {
  const values = fc.array(fc.oneof(fc.integer({ min: 0, max: 3 }), fc.integer({ min: -1000, max: 1000 })), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(values, fc.constantFrom(2, -0.5, 1000), (set, factor) => {
      const [plain, moved] = [individualsLimits(set), individualsLimits(set.map((v) => 7 + factor * v))];
      expect(moved.ok).toBe(plain.ok);
      if (!plain.ok || !moved.ok) return;
      expect(moved.value.mean).toBeCloseTo(7 + factor * plain.value.mean, 6);
      expect(moved.value.sd / (Math.abs(factor) * plain.value.sd)).toBeCloseTo(1, 10);
    }),
  );
});
