import type { ControlEvery, ControlTarget } from '../../../core/checks/control.ts';
import { controlPlanFigures } from '../../../core/checks/controlPlanFigures.ts';
import { workingDaysBetween } from '../../../core/checks/workingDaysBetween.ts';
import { noiseOfMeter } from '../../../core/reading/blendNoise.ts';
import { sayPercent } from '../../../core/reading/sayNoise.ts';
import type { Meter } from '../../../core/reading/types.ts';
import type { MultiRule } from '../../../core/stats/multiRules.ts';
import { content } from '../../content.ts';
import { formatCents, formatNumber, plural } from '../../format.ts';

const WORKING_DAYS_A_WEEK = 5;
const WORKING_DAYS_A_MONTH = 22;
const SHIFT = 0.3;

interface PlanToSay {
  readonly every: ControlEvery;
  readonly rules: readonly MultiRule[];
  readonly meter: Meter;
  readonly targets: readonly ControlTarget[];
  /** Of one swab; absent = not known. */
  readonly swabPriceCents?: number | undefined;
  /** ISO 4217, as the practice has it. */
  readonly currency?: string | undefined;
}

/** "about 4 swabs a month, 9.80 GBP; a rise of 30 % is noticed after 8 days on average, ..." */
export function sayPlanFigures({ every, rules, meter, targets, swabPriceCents, currency }: PlanToSay): string {
  const figures = controlPlanFigures({
    daysBetween: workingDaysBetween(every, WORKING_DAYS_A_WEEK),
    rules,
    sdLn: sdOfControls(meter, targets),
    workingDaysAMonth: WORKING_DAYS_A_MONTH,
    newLotSwabsAMonth: 0,
    shiftFraction: SHIFT,
    costOfControlCents: swabPriceCents,
  });
  if (!figures.ok) return 'No rule is ticked that could stop anything.';
  const { swabsAMonth, costAMonthCents, daysUntilNoticed, daysBetweenFalseStops } = figures.value;
  const { rise, fall } = daysUntilNoticed;
  const noticed = `a rise of ${sayPercent(SHIFT)} is noticed after ${sayDays(rise)} on average, a fall after ${sayDays(fall)}`;
  const cost = costAMonthCents === undefined ? 'price of a swab not known' : sayCost(Math.round(costAMonthCents), currency);
  return `about ${plural(Math.max(1, Math.round(swabsAMonth)), 'swab')} a month, ${cost}; ${noticed}; a stop without a cause about every ${sayDays(daysBetweenFalseStops)}.`;
}

/** Of the newest target; without one, what one swab after another differs on this meter. */
function sdOfControls(meter: Meter, targets: readonly ControlTarget[]): number {
  const { variance, prior } = noiseOfMeter(content.readingNoise, meter).repeatability;
  return targets.at(-1)?.sdLn ?? Math.sqrt(variance ?? prior.variance);
}

/** Whole days; rounded to tens from 100 on. */
function sayDays(days: number): string {
  const whole = days < 100 ? Math.max(1, Math.round(days)) : 10 * Math.round(days / 10);
  return whole === 1 ? 'a day' : `${formatNumber(whole)} days`;
}

/** "12.50 GBP", as the shelf names its currency; only the number where the practice has none. */
const sayCost = (cents: number, currency: string | undefined): string =>
  currency === undefined ? `${formatCents(cents)} in your currency` : `${formatCents(cents)} ${currency}`;
