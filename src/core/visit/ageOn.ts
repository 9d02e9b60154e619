import { differenceInCalendarMonths, isValid, parseISO } from 'date-fns';

/**
 * Age on a day, in completed years and completed months; a person born on 29 February has the birthday on 1 March in other years.
 * @param birthDate  ISO local date
 * @param onDate     ISO local date, not before birthDate
 * @returns whole years and whole months since birth, both >= 0
 * @throws RangeError if a date is not a date, or onDate lies before birthDate
 */
export function ageOn(birthDate: string, onDate: string): { readonly ageYears: number; readonly ageMonths: number } {
  const born = parseISO(birthDate);
  const on = parseISO(onDate);
  if (!isValid(born)) throw new RangeError(`birthDate must be a date like 1980-02-29: ${birthDate}`);
  if (!isValid(on)) throw new RangeError(`onDate must be a date like 2026-11-25: ${onDate}`);
  if (!(on.getTime() >= born.getTime())) throw new RangeError(`onDate ${onDate} lies before birthDate ${birthDate}`);
  // date-fns' differenceInMonths counts 28 February as a whole month for someone born on the 29th; whole months here mean the day was reached.
  const ageMonths = differenceInCalendarMonths(on, born) - (on.getDate() < born.getDate() ? 1 : 0);
  return { ageYears: Math.floor(ageMonths / 12), ageMonths };
}
