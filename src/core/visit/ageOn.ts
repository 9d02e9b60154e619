import { parseDate, wholeMonthsBetween } from './calendar.ts';

/**
 * Age on a day, in completed years and completed months; a person born on 29 February has the birthday on 1 March in other years.
 * @param birthDate  ISO local date
 * @param onDate     ISO local date, not before birthDate
 * @returns whole years and whole months since birth, both >= 0
 * @throws RangeError if a date is not a date, or onDate lies before birthDate
 */
export function ageOn(birthDate: string, onDate: string): { readonly ageYears: number; readonly ageMonths: number } {
  if (!parseDate(birthDate)) throw new RangeError(`birthDate must be a date like 1980-02-29: ${birthDate}`);
  if (!parseDate(onDate)) throw new RangeError(`onDate must be a date like 2026-11-25: ${onDate}`);
  if (!(onDate >= birthDate)) throw new RangeError(`onDate ${onDate} lies before birthDate ${birthDate}`);
  const ageMonths = wholeMonthsBetween(birthDate, onDate);
  return { ageYears: Math.floor(ageMonths / 12), ageMonths };
}
