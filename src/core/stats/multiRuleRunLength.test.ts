import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { multiRuleRunLength } from './multiRuleRunLength.ts';
import { firesRule, MULTI_RULES, type MultiRule, NO_RUNS, nextRuns, STOP_RULES } from './multiRules.ts';
import { shewhartRunLength } from './shewhartRunLength.ts';

/** Points until the first of the rules fires, on a chart that begins empty. */
function simulateRun(rules: readonly MultiRule[], draw: () => number): number {
  let before = NO_RUNS;
  for (let points = 1; ; points++) {
    const z = draw();
    const after = nextRuns(before, z);
    if (rules.some((rule) => firesRule(rule, before, after, z))) return points;
    before = after;
  }
}

// Seeded simulation of the flagged chart, 3,000 runs each. Tolerance: 4 standard errors of the simulated mean.
test.each([
  { rules: STOP_RULES, shift: 0 },
  { rules: STOP_RULES, shift: 0.5 },
  { rules: STOP_RULES, shift: 2 },
  { rules: ['1-3s', '2-2s', 'R-4s'] as const, shift: -1 },
  { rules: ['4-1s'] as const, shift: 0.5 },
  { rules: ['10-x'] as const, shift: 0.3 },
  { rules: ['R-4s'] as const, shift: 0 },
])('$rules with a shift of $shift', ({ rules, shift }) => {
  const { normal } = seededRandom(1981);
  const lengths = Array.from({ length: shift === 0 && rules.length === 1 ? 400 : 3000 }, () => simulateRun(rules, () => normal() + shift));
  const mean = lengths.reduce((a, b) => a + b, 0) / lengths.length;
  const se = Math.sqrt(lengths.reduce((a, b) => a + (b - mean) ** 2, 0)) / lengths.length;
  expect(Math.abs(multiRuleRunLength(rules, shift) - mean)).toBeLessThan(4 * se);
});

describe('multiRuleRunLength', () => {
  it('is the chart of single values for the rule of one point', () => {
    for (const shift of [-1, 0, 2, 6]) {
      expect(multiRuleRunLength(['1-3s'], shift) / shewhartRunLength(3, 2, shift)).toBeCloseTo(1, 12);
      expect(multiRuleRunLength(['1-2s'], shift) / shewhartRunLength(2, 2, shift)).toBeCloseTo(1, 12);
    }
  });

  it('is exact where the answer is known: ten on one side of the mean, 2^10 - 1 points', () => {
    expect(multiRuleRunLength(['10-x'], 0)).toBeCloseTo(1023, 9);
  });

  it('is the same for a fall as for a rise, and shorter with each further rule', () => {
    for (const shift of [0, 0.7, 2.5]) {
      expect(multiRuleRunLength(STOP_RULES, -shift) / multiRuleRunLength(STOP_RULES, shift)).toBeCloseTo(1, 12);
      for (let count = 1; count < STOP_RULES.length; count++) {
        expect(multiRuleRunLength(STOP_RULES.slice(0, count + 1), shift)).toBeLessThan(
          multiRuleRunLength(STOP_RULES.slice(0, count), shift),
        );
      }
    }
    expect(multiRuleRunLength([...MULTI_RULES].reverse(), 1)).toBe(multiRuleRunLength(MULTI_RULES, 1));
  });

  it('names what is wrong', () => {
    expect(() => multiRuleRunLength([], 0)).toThrow(/^rules must/);
    expect(() => multiRuleRunLength(['1-3s'], Number.NaN)).toThrow(/^shiftSd must/);
  });
});
