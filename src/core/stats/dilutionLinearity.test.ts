import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { type DilutionLinearity, type DilutionPoint, dilutionLinearity } from './dilutionLinearity.ts';

const { dilution } = JSON.parse(readFileSync('test/reference/statistics/dilution.json', 'utf8'));
const points: DilutionPoint[] = dilution.dataset.fmol.map((level: number, i: number) => ({ level, value: dilution.dataset.rlu[i] }));
const fitOf = (result: ReturnType<typeof dilutionLinearity>): DilutionLinearity => {
  if (!result.ok) throw new Error(result.reason);
  return result.value;
};

// Own seeded simulation, lm in R 4.2.2 (test/reference/statistics/dilution.json). Tolerance: 1e-9 relative.
test('line, lack of fit and curvature', () => {
  const want = dilution.outputs;
  const got = fitOf(dilutionLinearity(points));
  const pairs = [
    [got.intercept, want.intercept],
    [got.slope, want.slope],
    [got.slopeInterval.low, want.slope_ci95[0]],
    [got.slopeInterval.high, want.slope_ci95[1]],
    [got.r2, want.r2],
    [got.residualSd, want.resid_sd],
    [got.pSlopeOne, want.test_slope1_p],
    [got.lackOfFit.ok ? got.lackOfFit.value.f : undefined, want.lack_of_fit_F],
    [got.lackOfFit.ok ? got.lackOfFit.value.p : undefined, want.lack_of_fit_p],
    [got.lackOfFit.ok ? got.lackOfFit.value.dfLack : undefined, want.lack_of_fit_df[0]],
    [got.lackOfFit.ok ? got.lackOfFit.value.dfError : undefined, want.lack_of_fit_df[1]],
    [got.quadratic.ok ? got.quadratic.value.coefficient : undefined, want.quad_coef],
    [got.quadratic.ok ? got.quadratic.value.p : undefined, want.quad_p],
  ];
  for (const [value, wanted] of pairs) expect(Math.abs(value / wanted - 1)).toBeLessThan(1e-9);
});

describe('dilutionLinearity', () => {
  const series = (levels: readonly number[], value: (level: number) => number) => levels.map((level) => ({ level, value: value(level) }));

  it('does not mind the unit of the amount', () => {
    const moved = fitOf(dilutionLinearity(points.map((p) => ({ ...p, level: p.level * 1000 }))));
    const plain = fitOf(dilutionLinearity(points));
    expect(moved.slope).toBeCloseTo(plain.slope, 11);
    expect(moved.lackOfFit).toMatchObject({ ok: true, value: { f: expect.closeTo(plain.lackOfFit.ok ? plain.lackOfFit.value.f : 0, 8) } });
  });

  it('says why a test is not defined', () => {
    const once = fitOf(dilutionLinearity(series([1, 10, 100, 1000], (x) => x * (1 + (x % 7) / 50))));
    expect(once.lackOfFit).toEqual({ ok: false, reason: 'no-replicates' });
    expect(once.quadratic.ok).toBe(true);
    const twoLevels = fitOf(dilutionLinearity([...series([1, 10, 10], (x) => x), { level: 1, value: 2 }]));
    expect(twoLevels.lackOfFit).toEqual({ ok: false, reason: 'two-levels' });
    expect(twoLevels.quadratic).toEqual({ ok: false, reason: 'two-levels' });
    const alike = fitOf(dilutionLinearity(series([1, 1, 10, 10, 100, 100], (x) => (x === 10 ? 25 : x))));
    expect(alike.lackOfFit).toEqual({ ok: false, reason: 'replicates-equal' });
    const parabola = fitOf(dilutionLinearity(series([1, 10, 100, 1000], (x) => 10 ** (Math.log10(x) ** 2))));
    expect(parabola.quadratic).toEqual({ ok: false, reason: 'exact-fit' });
    expect(fitOf(dilutionLinearity(series([1, 10, 50], (x) => x * (x === 10 ? 2 : 1)))).quadratic).toEqual({
      ok: false,
      reason: 'too-few-points',
    });
  });

  it('says why there is no line, and names a zero', () => {
    expect(dilutionLinearity(series([1, 10], (x) => x))).toEqual({ ok: false, reason: 'too-few-points' });
    expect(dilutionLinearity(series([1, 10, 100], () => 40))).toEqual({ ok: false, reason: 'no-spread' });
    expect(() => dilutionLinearity(series([1, 0], (x) => x + 1))).toThrow(/^points.1.level must/);
    expect(() => dilutionLinearity(series([1, 2], () => 0))).toThrow(/^points.0.value must/);
  });
});
