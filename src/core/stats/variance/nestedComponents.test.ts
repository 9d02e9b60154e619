import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { logValues } from './logValues.ts';
import type { NestedObservation } from './nestedCells.ts';
import { nestedComponents } from './nestedComponents.ts';
import { oneWayComponents } from './oneWayComponents.ts';

const { nested } = JSON.parse(readFileSync('test/reference/statistics/gauge.json', 'utf8'));
const observations: readonly NestedObservation[] = logValues(
  nested.rlu.map((value: number, i: number) => ({ group: nested.lot[i], member: String(nested.swab[i]), value })),
);
const close = (got: number | null | undefined, want: number, tolerance: number) =>
  expect(Math.abs((got ?? Number.NaN) - want)).toBeLessThanOrEqual(tolerance * Math.abs(want));

// Own seeded simulation on natural logs: lm in R 4.2.2, limits from the published formulas written apart from ours
// (test/reference/statistics/gauge.json). Tolerance: 1e-9 relative.
test('own simulation against R', () => {
  const { anova, rawComponents, intervals, shares } = nestedComponents(observations);
  [anova.group, anova.member, anova.residual].forEach((row, i) => {
    close(row.sumSquares, nested.SS[i], 1e-9);
    expect(row.df).toBe(nested.df[i]);
    close(row.meanSquare, nested.MS[i], 1e-9);
  });
  close(anova.group.p, nested.p_A, 1e-9);
  close(anova.member.f, nested.F_B, 1e-9);
  close(anova.member.p, nested.p_B, 1e-9);
  close(rawComponents.group, nested.var_A_raw, 1e-9);
  close(rawComponents.member, nested.var_B_raw, 1e-9);
  close(rawComponents.residual, nested.var_error, 1e-9);
  close(shares.group, nested.var_A_raw / nested.total, 1e-9);
  close(intervals.group.low, nested.A_MLS95.lower, 1e-9);
  close(intervals.group.high, nested.A_MLS95.upper, 1e-9);
  close(intervals.member.low, nested.B_MLS95.lower, 1e-9);
  close(intervals.member.high, nested.B_MLS95.upper, 1e-9);
});

describe('nestedComponents', () => {
  const value = fc.oneof(fc.constantFrom(1, 5, 1e6), fc.double({ min: 1, max: 1e6, noNaN: true }));
  const size = fc.integer({ min: 2, max: 4 });
  const studies = fc
    .tuple(size, size, size)
    .chain(([a, b, n]) =>
      fc
        .array(value, { minLength: a * b * n, maxLength: a * b * n })
        .map((values) => values.map((x, i) => ({ group: `g${i % a}`, member: `m${Math.floor(i / a) % b}`, value: x }))),
    );

  it('agrees with the one-way study of the same members where groups are left out', () => {
    fc.assert(
      fc.property(studies, (list) => {
        const cells = new Map<string, number[]>();
        for (const { group, member, value: x } of list) cells.set(group + member, [...(cells.get(group + member) ?? []), x]);
        fc.pre([...cells.values()].some((cell) => cell.some((x) => x !== cell[0])));
        const got = nestedComponents(list);
        const flat = oneWayComponents([...cells.values()]);
        const slack = 1e-9 * got.anova.total.sumSquares;
        expect(Math.abs(flat.components.residual - got.components.residual)).toBeLessThanOrEqual(slack);
        expect(flat.intervals.residual.high / got.intervals.residual.high).toBeCloseTo(1, 8);
        const between = got.anova.group.sumSquares + got.anova.member.sumSquares;
        expect(Math.abs(flat.anova.between.sumSquares - between)).toBeLessThanOrEqual(slack);
        expect(Object.values(got.shares).reduce((x, y) => x + y, 0)).toBeCloseTo(1, 10);
        for (const { low, high } of Object.values(got.intervals)) expect(0 <= low && low <= high).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it('counts a name of a member within its group only', () => {
    const renamed = observations.map((x) => ({ ...x, member: `${x.group} ${x.member}` }));
    expect(nestedComponents(renamed).rawComponents).toEqual(nestedComponents(observations).rawComponents);
  });

  it('says what is missing and what would make it work', () => {
    const row = (group: string, member: string, x: number) => ({ group, member, value: x });
    const full = ['a', 'b'].flatMap((g) => ['1', '2'].flatMap((m) => [row(g, m, 1), row(g, m, 2)]));
    expect(() => nestedComponents([])).toThrow(/at least two groups: 0/);
    expect(() => nestedComponents(full.filter((x) => x.group === 'a'))).toThrow(/such as a second lot/);
    expect(() => nestedComponents(full.filter((x) => x.member === '1'))).toThrow(/two members in each group/);
    expect(() => nestedComponents(full.slice(2))).toThrow(/1 in group "a", elsewhere up to 2/);
    expect(() => nestedComponents(full.slice(1))).toThrow(/1 of member "1" in group "a", elsewhere up to 2/);
    expect(() => nestedComponents(full.filter((_, i) => i % 2 === 0))).toThrow(/read at least twice/);
    expect(() => nestedComponents(full.map((x) => ({ ...x, value: 3 })))).toThrow(/must differ between repeats/);
  });
});
