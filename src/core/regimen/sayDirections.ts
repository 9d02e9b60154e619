import type { PlanLine } from './types.ts';

const DAYS_PER_WEEK = 7;

/** "Twice a day: a pea", "At the visit: a thin coat". An amount for the age takes the place of the one on the shelf. */
export function sayDirections({ use, amountNote, amountKind }: Pick<PlanLine, 'use' | 'amountNote' | 'amountKind'>): string {
  const amounts = amountKind === undefined ? [use.amount, amountNote] : [amountNote ?? use.amount];
  const amount = amounts
    .filter((part) => part !== undefined)
    .map((part) => part.replace(/\.$/, ''))
    .join('. ');
  return `${oftenOf(use)}: ${amount}${use.courseDays === undefined ? '' : `, for ${use.courseDays} days`}`;
}

function oftenOf({ atVisit, timesPerDay }: PlanLine['use']): string {
  if (atVisit) return 'At the visit';
  if (timesPerDay < 1) {
    const days = Math.round(1 / timesPerDay);
    return days === DAYS_PER_WEEK ? 'Once a week' : `Once every ${days} days`;
  }
  return timesPerDay === 1 ? 'Once a day' : timesPerDay === 2 ? 'Twice a day' : `${timesPerDay} times a day`;
}
