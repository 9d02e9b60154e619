import type { ShelfItem } from '../types.ts';

/** A course of chlorhexidine has an end; about a month is the longest that a label gives. */
export const LONGEST_COURSE_DAYS = 30;

export interface ChlorhexidineCourse {
  /** null: not noted; it is then asked, never taken as open-ended. */
  readonly days: number | null;
  readonly totalMl: number | null;
  readonly isTooLong: boolean;
  readonly says: string;
}

/**
 * Length and volume of a course of chlorhexidine.
 * @throws RangeError when the days are not above 0
 * @source chlorhexidineLabels
 */
export function chlorhexidineCourse({ courseDays: days, timesPerDay, amountMl }: ShelfItem['use']): ChlorhexidineCourse {
  if (days === undefined)
    return { days: null, totalMl: null, isTooLong: false, says: 'Length of the course not noted: say how many days.' };
  if (!(days > 0)) throw new RangeError(`courseDays must be above 0: ${days}`);
  const totalMl = amountMl === undefined ? null : amountMl * timesPerDay * days;
  const isTooLong = days > LONGEST_COURSE_DAYS;
  const volume = totalMl === null ? '' : `, ${Number(totalMl.toPrecision(3))} mL in all`;
  const says = isTooLong
    ? `${days} days is longer than any label read: at most about a month.`
    : `For ${days} days${volume}, then it ends.`;
  return { days, totalMl, isTooLong, says };
}
