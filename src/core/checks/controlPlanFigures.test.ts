import { describe, expect, it, test } from 'vitest';
import { seededRandom } from '../../../test/reference/statistics/seededRandom.ts';
import { multiRuleRunLength } from '../stats/multiRuleRunLength.ts';
import { firesRule, MULTI_RULES, NO_RUNS, nextRuns, STOP_RULES } from '../stats/multiRules.ts';
import { type ControlPlanFigures, controlPlanFigures, type PlannedControls } from './controlPlanFigures.ts';

const daily: PlannedControls = {
  daysBetween: 1,
  rules: MULTI_RULES,
  sdLn: 0.15,
  workingDaysAMonth: 20,
  newLotSwabsAMonth: 2,
  costOfControlCents: 350,
  shiftFraction: 0.3,
};
const figuresOf = (plan: PlannedControls): ControlPlanFigures => {
  const figures = controlPlanFigures(plan);
  if (!figures.ok) throw new Error(figures.reason);
  return figures.value;
};

/** Days from a shift to the stop in one practice: readings on the log scale, a target of its own, a shift at any moment between two controls. */
function simulateDays(
  { daysBetween, sdLn, targetCount }: PlannedControls,
  shiftLn: number,
  random: ReturnType<typeof seededRandom>,
): number {
  const target = targetCount === undefined ? 0 : (sdLn * random.normal()) / Math.sqrt(targetCount);
  let days = daysBetween * random.uniform();
  for (let runs = NO_RUNS; ; days += daysBetween) {
    const z = (shiftLn + sdLn * random.normal() - target) / sdLn;
    const after = nextRuns(runs, z);
    if (STOP_RULES.some((rule) => firesRule(rule, runs, after, z))) return days;
    runs = after;
  }
}

// Seeded simulation of practices, 2,000 each. Tolerance: 4 standard errors of the simulated mean.
test.each([
  { what: 'daily, target known', plan: daily },
  { what: 'daily, target from ten controls', plan: { ...daily, targetCount: 10 } },
  { what: 'weekly, noisy swabs, target from ten controls', plan: { ...daily, daysBetween: 5, sdLn: 0.3, targetCount: 10 } },
])('days until a rise and a fall of 30 % are noticed: $what', ({ plan }) => {
  const { daysUntilNoticed } = figuresOf(plan);
  for (const [side, shiftLn] of [
    ['rise', Math.log(1.3)],
    ['fall', Math.log(0.7)],
  ] as const) {
    const random = seededRandom(730);
    const days = Array.from({ length: 2000 }, () => simulateDays(plan, shiftLn, random));
    const mean = days.reduce((a, b) => a + b, 0) / days.length;
    const se = Math.sqrt(days.reduce((a, b) => a + (b - mean) ** 2, 0)) / days.length;
    expect(Math.abs(daysUntilNoticed[side] - mean)).toBeLessThan(4 * se);
  }
});

// Stops without a cause as a rate: each practice has its own target, and stops as often as its own chart does. 4 standard errors.
test('days between false stops, with targets from ten controls', () => {
  const random = seededRandom(15);
  const rates = Array.from({ length: 400 }, () => 1 / multiRuleRunLength(STOP_RULES, random.normal() / Math.sqrt(10)));
  const mean = rates.reduce((a, b) => a + b, 0) / rates.length;
  const se = Math.sqrt(rates.reduce((a, b) => a + (b - mean) ** 2, 0)) / rates.length;
  expect(Math.abs(1 / figuresOf({ ...daily, targetCount: 10 }).daysBetweenFalseStops - mean)).toBeLessThan(4 * se);
});

describe('controlPlanFigures', () => {
  it('counts swabs and cost, and gives no cost where the price is not known', () => {
    expect(figuresOf(daily)).toMatchObject({ swabsAMonth: 22, costAMonthCents: 7700 });
    expect(figuresOf({ ...daily, daysBetween: 5, newLotSwabsAMonth: 0 })).toMatchObject({ swabsAMonth: 4, costAMonthCents: 1400 });
    expect(figuresOf({ ...daily, costOfControlCents: undefined }).costAMonthCents).toBe(undefined);
  });

  it('is the run length itself where the target is known, less half a stretch for the moment of the shift', () => {
    const { daysUntilNoticed, daysBetweenFalseStops } = figuresOf({ ...daily, daysBetween: 5 });
    expect(daysUntilNoticed.rise).toBeCloseTo(5 * (multiRuleRunLength(STOP_RULES, Math.log(1.3) / 0.15) - 0.5), 9);
    expect(daysBetweenFalseStops).toBeCloseTo(5 * 158.2708, 2);
  });

  it('notices a fall sooner than a rise, and everything later with noisier swabs, fewer controls or fewer rules', () => {
    const plain = figuresOf(daily).daysUntilNoticed;
    expect(plain.fall).toBeLessThan(plain.rise);
    for (const worse of [{ sdLn: 0.3 }, { daysBetween: 5 }, { rules: ['1-3s'] as const }, { targetCount: 10 }]) {
      expect(figuresOf({ ...daily, ...worse }).daysUntilNoticed.rise).toBeGreaterThan(plain.rise);
    }
    expect(figuresOf({ ...daily, targetCount: 10 }).daysBetweenFalseStops).toBeLessThan(figuresOf(daily).daysBetweenFalseStops);
  });

  it('takes a target from very many controls for a known one', () => {
    expect(figuresOf({ ...daily, targetCount: 1e9 }).daysUntilNoticed.rise).toBeCloseTo(figuresOf(daily).daysUntilNoticed.rise, 6);
  });

  it('has no answer where only the warning is in use', () => {
    expect(controlPlanFigures({ ...daily, rules: ['1-2s'] })).toEqual({ ok: false, reason: 'no-stop-rule' });
    expect(controlPlanFigures({ ...daily, rules: [] })).toEqual({ ok: false, reason: 'no-stop-rule' });
  });

  test.each([
    { daysBetween: 0 },
    { sdLn: 0 },
    { sdLn: Number.NaN },
    { workingDaysAMonth: -1 },
    { newLotSwabsAMonth: -1 },
    { costOfControlCents: -1 },
    { shiftFraction: 1 },
    { targetCount: 0 },
  ])('names %o', (wrong) => {
    expect(() => controlPlanFigures({ ...daily, ...wrong })).toThrow(new RegExp(`^${Object.keys(wrong)[0]} must`));
  });
});
