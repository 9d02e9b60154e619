import { gaussLegendre } from '../stats/gaussLegendre.ts';
import { multiRuleRunLength } from '../stats/multiRuleRunLength.ts';
import { type MultiRule, STOP_RULES } from '../stats/multiRules.ts';
import type { Result } from '../stats/result.ts';

/** What a plan asks for and what it is worked out with. A working day is one on which people are swabbed. */
export interface PlannedControls {
  /** Working days from one control to the next: 1 = daily, 5 = weekly in a week of five. */
  readonly daysBetween: number;
  /** The control rules in use; the warning among them stops nothing. */
  readonly rules: readonly MultiRule[];
  /** Sd of ln(RLU) of one control with the practice's own meter and swabs, above 0. */
  readonly sdLn: number;
  /** How many controls the target comes from; absent = the target is known. */
  readonly targetCount?: number | undefined;
  readonly workingDaysAMonth: number;
  /** Swabs that new lots take on top, a month: their comparison or first controls. */
  readonly newLotSwabsAMonth: number;
  /** A swab and its share of the control solution; absent = not known, and then no cost is given. */
  readonly costOfControlCents?: number | undefined;
  /** Which shift is meant, as a fraction: 0.3 = all readings 30 % too high, or too low. */
  readonly shiftFraction: number;
}

export interface ControlPlanFigures {
  readonly swabsAMonth: number;
  readonly costAMonthCents: number | undefined;
  /** Working days from the shift to the control that stops, on average. A rise takes longer: on the log scale it is the smaller shift. */
  readonly daysUntilNoticed: { readonly rise: number; readonly fall: number };
  /** Working days from one stop without a cause to the next, on average; Infinity where there is none. */
  readonly daysBetweenFalseStops: number;
}

/**
 * What a plan of controls costs, how soon it notices a shift, and how often it stops for nothing.
 * The shift may begin at any moment between two controls. The chart begins empty, which is its slowest state: runs that it remembers
 * can only make it stop sooner. Where the target comes from few controls its own error is averaged over (the stops without a cause as
 * a rate), for a target that lies a little off finds shifts to one side late and stops for nothing more often.
 * @returns the figures, or ok: false where no rule of the plan can stop anything
 * @throws RangeError naming the field
 * @accuracy 1e-6 relative in the average over the target; within 4 standard errors of simulated practices (controlPlanFigures.test.ts)
 * @source champ-woodall1987
 */
export function controlPlanFigures(plan: PlannedControls): Result<ControlPlanFigures, 'no-stop-rule'> {
  requirePlan(plan);
  const { daysBetween, sdLn, shiftFraction, costOfControlCents } = plan;
  const rules = STOP_RULES.filter((rule) => plan.rules.includes(rule));
  if (rules.length === 0) return { ok: false, reason: 'no-stop-rule' };
  const offsets = targetErrors(plan.targetCount);
  const mean = (of: (offset: number) => number) => offsets.reduce((sum, { offset, weight }) => sum + weight * of(offset), 0);
  const daysToStop = (shiftLn: number) => daysBetween * (mean((offset) => multiRuleRunLength(rules, shiftLn / sdLn + offset)) - 0.5);
  const swabsAMonth = plan.workingDaysAMonth / daysBetween + plan.newLotSwabsAMonth;
  return {
    ok: true,
    value: {
      swabsAMonth,
      costAMonthCents: costOfControlCents === undefined ? undefined : swabsAMonth * costOfControlCents,
      daysUntilNoticed: { rise: daysToStop(Math.log1p(shiftFraction)), fall: daysToStop(Math.log1p(-shiftFraction)) },
      daysBetweenFalseStops: daysBetween / mean((offset) => 1 / multiRuleRunLength(rules, offset)),
    },
  };
}

function requirePlan(plan: PlannedControls): void {
  const { daysBetween, sdLn, targetCount, workingDaysAMonth, newLotSwabsAMonth, costOfControlCents, shiftFraction } = plan;
  for (const [name, value] of Object.entries({ daysBetween, sdLn, workingDaysAMonth }))
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name} must be above 0: ${value}`);
  for (const [name, value] of Object.entries({ newLotSwabsAMonth, costOfControlCents: costOfControlCents ?? 0 }))
    if (!(value >= 0 && Number.isFinite(value))) throw new RangeError(`${name} must be 0 or more: ${value}`);
  if (!(shiftFraction > 0 && shiftFraction < 1)) throw new RangeError(`shiftFraction must be between 0 and 1, exclusive: ${shiftFraction}`);
  if (targetCount !== undefined && !(targetCount >= 1)) throw new RangeError(`targetCount must be at least 1: ${targetCount}`);
}

/** How far, in sd of one control, a target from `count` controls lies off, and how often: normal with variance 1 / count. */
function targetErrors(count: number | undefined): { readonly offset: number; readonly weight: number }[] {
  if (count === undefined) return [{ offset: 0, weight: 1 }];
  const { nodes, weights } = gaussLegendre(NODES);
  const density = Array.from(nodes, (node, i) => ({
    offset: (REACH * node) / Math.sqrt(count),
    weight: (weights[i] ?? 0) * Math.exp(-0.5 * (REACH * node) ** 2),
  }));
  const total = density.reduce((sum, { weight }) => sum + weight, 0);
  return density.map(({ offset, weight }) => ({ offset, weight: weight / total }));
}

/** In sd of the target: beyond lies one target in 1e9. */
const REACH = 6;
const NODES = 32;
