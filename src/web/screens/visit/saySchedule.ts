import type { PlanLine } from '../../../core/regimen/types.ts';
import { plural } from '../../format.ts';

/** ", twice a day", ", today". */
export function saySchedule({ use }: Pick<PlanLine, 'use'>): string {
  if (use.atVisit) return ', today';
  const times =
    use.timesPerDay === 1
      ? 'once a day'
      : use.timesPerDay === 2
        ? 'twice a day'
        : use.timesPerDay > 0
          ? `${use.timesPerDay} times a day`
          : '';
  const days = use.courseDays ? `for ${plural(use.courseDays, 'day')}` : '';
  const said = [times, days].filter(Boolean).join(' ');
  return said ? `, ${said}` : '';
}
