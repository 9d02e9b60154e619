import type { PlanLine } from './types.ts';

const DAYS_PER_WEEK = 7;

/** "Twice a day: a pea", "At the visit: a thin coat". */
export function sayDirections(line: Pick<PlanLine, 'use' | 'amountNote' | 'amountKind'>): string {
  const { courseDays } = line.use;
  return `${oftenOf(line.use)}: ${sayAmount(line)}${courseDays === undefined ? '' : `, for ${courseDays} days`}`;
}

/** "10 mL for 1 minute. Nothing to eat or drink for 30 minutes afterwards". An amount for the age takes the place of the one on the shelf. */
export function sayAmount({ use, amountNote, amountKind }: Pick<PlanLine, 'use' | 'amountNote' | 'amountKind'>): string {
  const amounts = amountKind === undefined ? [use.amount, amountNote] : [amountNote ?? use.amount];
  return amounts
    .filter((part) => part !== undefined)
    .map((part) => part.replace(/\.$/, ''))
    .join('. ');
}

function oftenOf({ atVisit, timesPerDay }: PlanLine['use']): string {
  if (atVisit) return 'At the visit';
  if (timesPerDay < 1) {
    const days = Math.round(1 / timesPerDay);
    return days === DAYS_PER_WEEK ? 'Once a week' : `Once every ${days} days`;
  }
  return timesPerDay === 1 ? 'Once a day' : timesPerDay === 2 ? 'Twice a day' : `${timesPerDay} times a day`;
}
