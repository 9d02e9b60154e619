import type { ControlEvery } from './control.ts';

/**
 * Working days from one control to the next, as `controlPlanFigures` counts them. Controls at a new lot come on top and are not in it.
 * @param workingDaysAWeek  days on which people are swabbed, above 0 up to 7
 * @returns at least 1: more often than on every working day no control is taken
 * @throws RangeError for another number of days
 */
export function workingDaysBetween(every: ControlEvery, workingDaysAWeek: number): number {
  if (!(workingDaysAWeek > 0 && workingDaysAWeek <= 7))
    throw new RangeError(`workingDaysAWeek must be above 0, at most 7: ${workingDaysAWeek}`);
  if (every.kind === 'daily') return 1;
  const days = every.kind === 'own' ? every.days : 7;
  if (!(days >= 1)) throw new RangeError(`every.days must be at least 1: ${days}`);
  return Math.max(1, (days * workingDaysAWeek) / 7);
}
