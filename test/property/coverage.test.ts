import { describe, expect, test } from 'vitest';
import type { Interval } from '../../src/core/stats/interval.ts';
import { trendBand } from '../../src/core/stats/mixed/trendBand.ts';
import { randomInterceptTrend } from '../../src/core/stats/mixed/trendFit.ts';
import { crossedComponents } from '../../src/core/stats/variance/crossedComponents.ts';
import { nestedComponents } from '../../src/core/stats/variance/nestedComponents.ts';
import { oneWayComponents } from '../../src/core/stats/variance/oneWayComponents.ts';
import { seededRandom } from '../reference/statistics/seededRandom.ts';
import { simulateCrossed, simulateNested, simulateOneWay, simulateTrend } from '../reference/statistics/simulatedStudies.ts';

/**
 * How often the 95 % intervals of variance components hold the true component in simulated studies, and the band of a trend the true line.
 * Bounds of 2,000 runs (EBBLINE_LONG=1): 93 to 97 %. The short version has fewer runs and a fixed seed; its bounds are wider by two
 * binomial standard errors, 2.5 %.
 */
const RUNS = process.env.EBBLINE_LONG === '1' ? 2_000 : 300;
const chance = process.env.EBBLINE_LONG === '1' ? 0 : 2 * Math.sqrt((0.95 * 0.05) / RUNS);
const LEAST = 0.93 - chance;
const MOST = 0.97 + chance;

type Truth<Name extends string> = Readonly<Record<Name, number>>;

function measureCoverage<Name extends string>(truth: Truth<Name>, intervalsOf: (run: number) => Readonly<Record<Name, Interval>>) {
  const names = Object.keys(truth) as Name[];
  const held = new Map(names.map((name) => [name, 0]));
  for (let run = 0; run < RUNS; run += 1) {
    const intervals = intervalsOf(run);
    for (const name of names) {
      const { low, high } = intervals[name];
      if (low <= truth[name] && truth[name] <= high) held.set(name, (held.get(name) ?? 0) + 1);
    }
  }
  return names.map((name) => ({ name, share: (held.get(name) ?? 0) / RUNS }));
}

function expectCovered(study: string, shares: readonly { readonly name: string; readonly share: number }[]): void {
  console.log(`${study}, ${RUNS} runs: ${shares.map(({ name, share }) => `${name} ${(100 * share).toFixed(1)} %`).join(', ')}`);
  const outside = shares.filter(({ share }) => !(share >= LEAST && share <= MOST));
  expect(outside).toEqual([]);
}

describe('95 % intervals of variance components hold the truth in 93 to 97 % of studies', () => {
  test.each([
    // ATP solution: solutions far apart, hands and swabs.
    { part: 1.2, operator: 0.06, interaction: 0.02, repeatability: 0.04, parts: 10, operators: 3, repeats: 3 },
    // Coupons alike, hands that differ.
    { part: 0.05, operator: 0.1, interaction: 0.05, repeatability: 0.05, parts: 8, operators: 4, repeats: 2 },
  ])('crossed, $parts parts x $operators operators x $repeats', ({ parts, operators, repeats, ...components }) => {
    const { part, operator, interaction, repeatability } = components;
    const reproducibility = operator + interaction;
    const gauge = reproducibility + repeatability;
    const truth = { part, operator, interaction, repeatability, reproducibility, gauge, total: gauge + part };
    const { normal } = seededRandom(20_261_126);
    const shares = measureCoverage(
      truth,
      () => crossedComponents(simulateCrossed({ normal, components }, { parts, operators, repeats })).intervals,
    );
    expectCovered(`crossed ${parts} x ${operators} x ${repeats}`, shares);
  });

  test.each([
    { group: 0.05, member: 0.03, residual: 0.012, groups: 6, members: 4, repeats: 3 },
    { group: 0.02, member: 0.05, residual: 0.05, groups: 5, members: 5, repeats: 2 },
  ])('nested, $groups groups x $members members x $repeats', ({ groups, members, repeats, ...components }) => {
    const { group, member, residual } = components;
    const truth = { group, member, residual, withinGroup: member + residual, total: group + member + residual };
    const { normal } = seededRandom(20_261_127);
    const shares = measureCoverage(
      truth,
      () => nestedComponents(simulateNested({ normal, components }, { groups, members, repeats })).intervals,
    );
    expectCovered(`nested ${groups} x ${members} x ${repeats}`, shares);
  });

  test.each([
    // Paired days within people.
    { group: 0.5, residual: 0.12, groups: 20, repeats: 2 },
    { group: 0.03, residual: 0.06, groups: 6, repeats: 5 },
  ])('one-way, $groups groups x $repeats', ({ groups, repeats, ...components }) => {
    const { group, residual } = components;
    const { normal } = seededRandom(20_261_128);
    const shares = measureCoverage(
      { group, residual, total: group + residual },
      () => oneWayComponents(simulateOneWay({ normal, components }, { groups, repeats })).intervals,
    );
    expectCovered(`one-way ${groups} x ${repeats}`, shares);
  });
});

describe('the 95 % band of a trend holds the true line in 93 to 97 % of studies', () => {
  test.each([12, 30])('%i people', (people) => {
    const random = seededRandom(20_261_129);
    const time = 9;
    let held = { person: 0, common: 0 };
    for (let run = 0; run < RUNS; run += 1) {
      const { truth, levels, observations } = simulateTrend(random, people);
      const fit = randomInterceptTrend(observations);
      const holds = (level: number, subject?: string) => {
        const [point] = trendBand(fit, [time], { subject });
        const line = level + truth.slope * time;
        return point !== undefined && point.low <= line && line <= point.high ? 1 : 0;
      };
      held = { person: held.person + holds(levels[3] ?? 0, 's3'), common: held.common + holds(truth.intercept) };
    }
    expectCovered(
      `band of ${people} people`,
      Object.entries(held).map(([name, count]) => ({ name, share: count / RUNS })),
    );
  });
});
