import type { PlanLine } from './types.ts';

/** "Twice a day: a pea", "At the visit: a thin coat". The amount for the age, where there is one. */
export function sayDirections({ use, amountNote }: Pick<PlanLine, 'use' | 'amountNote'>): string {
  return `${oftenOf(use)}: ${amountNote ?? use.amount}${use.courseDays === undefined ? '' : `, for ${use.courseDays} days`}`;
}

function oftenOf({ atVisit, timesPerDay }: PlanLine['use']): string {
  if (atVisit) return 'At the visit';
  if (timesPerDay < 1) return 'Less than once a day, as told';
  return timesPerDay === 1 ? 'Once a day' : timesPerDay === 2 ? 'Twice a day' : `${timesPerDay} times a day`;
}
