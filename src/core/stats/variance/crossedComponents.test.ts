import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type CrossedObservation, crossedCells } from './crossedCells.ts';
import { crossedComponents } from './crossedComponents.ts';
import { logValues } from './logValues.ts';

const { crossed } = JSON.parse(readFileSync('test/reference/statistics/gauge.json', 'utf8'));
const observations: readonly CrossedObservation[] = logValues(
  crossed.rlu.map((value: number, i: number) => ({ part: crossed.part[i], operator: crossed.operator[i], value })),
);
const close = (got: number | null | undefined, want: number, tolerance: number) =>
  expect(Math.abs((got ?? Number.NaN) - want)).toBeLessThanOrEqual(tolerance * Math.abs(want));

// Own seeded simulation on natural logs: lm and lmer (lme4 1.1-31) in R 4.2.2 (test/reference/statistics/gauge.json).
// Tolerance: 1e-9 relative; 1e-6 where the reference is an iterated REML fit.
test('own simulation against R', () => {
  const got = crossedComponents(observations);
  for (const row of ['part', 'operator', 'interaction', 'error', 'total'] as const) {
    close(got.anova[row].sumSquares, crossed.anova[row].SS, 1e-9);
    expect(got.anova[row].df).toBe(crossed.anova[row].df);
  }
  close(got.anova.part.f, crossed.anova.part.F_vs_interaction, 1e-9);
  close(got.anova.part.p, crossed.anova.part.p, 1e-8);
  close(got.anova.operator.p, crossed.anova.operator.p, 1e-9);
  close(got.anova.interaction.f, crossed.anova.interaction.F, 1e-9);
  close(got.anova.interaction.p, crossed.anova.interaction.p, 1e-9);
  for (const name of ['repeatability', 'interaction', 'operator', 'part'] as const) {
    close(got.rawComponents[name], crossed.rawComponents[name], 1e-9);
    expect(got.components[name]).toBe(got.rawComponents[name]);
  }
  for (const name of ['repeatability', 'operator', 'part'] as const) {
    close(got.pooled.rawComponents[name], crossed.pooledRawComponents[name], 1e-9);
  }
  close(got.pooled.anova.part.f, crossed.pooled.F_part, 1e-9);
  close(got.pooled.anova.operator.f, crossed.pooled.F_operator, 1e-9);
  expect(got.poolsAt25Percent).toBe(false);
  close(got.shares.part, crossed.shares.part / 100, 1e-9);
  close(got.shares.operator + got.shares.interaction, crossed.shares.reproducibility / 100, 1e-9);
  close(got.studyVariation.gauge, crossed.studyVariation.grr / 100, 1e-9);
  close(got.studyVariation.reproducibility, crossed.studyVariation.reproducibility / 100, 1e-9);
  close(got.studyVariation.part, crossed.studyVariation.part / 100, 1e-9);
  expect(got.distinctCategories).toBe(crossed.ndc);
  close(got.components.interaction, crossed.reml['part:operator'], 1e-6);
  close(got.components.part, crossed.reml.part, 1e-6);
});

// The same data; limits computed in R 4.2.2 from the published formulas, written apart from ours. Tolerance: 1e-9 relative.
test('intervals against R', () => {
  const { intervals } = crossedComponents(observations);
  const wanted = { repeatability: 'repeatability', part: 'part', operator: 'operator', gauge: 'gauge_total_MLS' } as const;
  for (const [name, key] of Object.entries(wanted)) {
    close(intervals[name as keyof typeof wanted].low, crossed.intervals[key].lower, 1e-9);
    close(intervals[name as keyof typeof wanted].high, crossed.intervals[key].upper, 1e-9);
  }
});

/** Cell means plus repeats that are the same in every cell. */
const study = (mean: (part: number, operator: number) => number, parts = 4, operators = 3, repeats = [-1, 1]) =>
  Array.from({ length: parts }, (_, i) =>
    Array.from({ length: operators }, (_, j) => repeats.map((e) => ({ part: `p${i}`, operator: `o${j}`, value: mean(i, j) + e }))),
  ).flat(2);

describe('crossedComponents', () => {
  it('pools an interaction that is not there, and counts it in no share', () => {
    const got = crossedComponents(study((i, j) => 10 * i + 3 * j));
    expect(got.anova.interaction.sumSquares).toBeCloseTo(0, 10);
    expect(got.poolsAt25Percent).toBe(true);
    expect(got.rawComponents.interaction).toBeLessThan(0);
    expect(got.components.interaction).toBe(0);
    expect(got.intervals.interaction.low).toBe(0);
    expect(got.shares.interaction).toBe(0);
    // By hand: error 24 on 12 + 6 degrees of freedom; parts 10 apart, operators 3 apart.
    const error = 24 / 18;
    expect(got.pooled.components.repeatability).toBeCloseTo(error, 12);
    expect(got.pooled.components.part).toBeCloseTo(500 / 3 - error / 6, 10);
    expect(got.pooled.components.operator).toBeCloseTo(9 - error / 8, 10);
    const gauge = error + 9 - error / 8;
    expect(got.variances.gauge).toBeCloseTo(gauge, 10);
    expect(got.distinctCategories).toBe(Math.floor(Math.sqrt((2 * got.pooled.components.part) / gauge)));
  });

  it('keeps an interaction that is there', () => {
    const got = crossedComponents(study((i, j) => 10 * i + 3 * j + (i === 1 && j === 1 ? 20 : 0)));
    expect(got.poolsAt25Percent).toBe(false);
    expect(got.shares.interaction).toBeGreaterThan(0.1);
  });

  it('has one category where parts do not differ', () => {
    const got = crossedComponents(study((_, j) => 3 * j));
    expect(got.components.part).toBe(0);
    expect(got.distinctCategories).toBe(1);
  });

  const value = fc.oneof(fc.constantFrom(1, 5, 1e6), fc.double({ min: 1, max: 1e6, noNaN: true }));
  const size = fc.integer({ min: 2, max: 4 });
  const studies = fc
    .tuple(size, size, size)
    .chain(([p, o, r]) =>
      fc
        .array(value, { minLength: p * o * r, maxLength: p * o * r })
        .map((values) => values.map((x, i) => ({ part: `p${i % p}`, operator: `o${Math.floor(i / p) % o}`, value: x }))),
    );

  it('splits the total, is finite, holds its estimates, and does not care about order and names', () => {
    fc.assert(
      fc.property(studies, (list) => {
        fc.pre(crossedCellsVary(list));
        const got = crossedComponents(list);
        const again = crossedComponents([...list].reverse().map((x) => ({ ...x, part: `other ${x.part}` })));
        expect(Object.values(got.shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 10);
        for (const name of ['repeatability', 'interaction', 'operator', 'part'] as const) {
          const { low, high } = got.intervals[name];
          const slack = 1e-9 * got.anova.total.sumSquares;
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(got.components[name] + slack);
          expect(high).toBeGreaterThanOrEqual(got.components[name] - slack);
          expect(Math.abs(again.rawComponents[name] - got.rawComponents[name])).toBeLessThanOrEqual(slack);
        }
        const mean = list.reduce((sum, x) => sum + x.value, 0) / list.length;
        const direct = list.reduce((sum, x) => sum + (x.value - mean) ** 2, 0);
        expect(Math.abs(got.anova.total.sumSquares / direct - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 50 },
    );
  });

  it('says what is missing and what would make it work', () => {
    const full = study((i, j) => i + j);
    expect(() => crossedComponents([])).toThrow(/observations must be of at least two parts: 0/);
    expect(() => crossedComponents(full.filter((x) => x.operator === 'o0'))).toThrow(/Let a second person/);
    expect(() => crossedComponents(full.slice(1))).toThrow(/1 of part "p0" by operator "o0", elsewhere up to 2/);
    expect(() => crossedComponents(full.filter((x) => x.part !== 'p0' || x.operator !== 'o0'))).toThrow(/0 of part "p0"/);
    expect(() => crossedComponents(full.filter((_, i) => i % 2 === 0))).toThrow(/at least twice/);
    expect(() => crossedComponents(full.map((x) => ({ ...x, value: 7 })))).toThrow(/must differ between repeats/);
    expect(() => logValues([{ value: 4 }, { value: 0 }])).toThrow(/observations\.1\.value must be above 0/);
  });
});

function crossedCellsVary(list: readonly CrossedObservation[]): boolean {
  try {
    return crossedCells(list).repeats > 1;
  } catch {
    return false;
  }
}
