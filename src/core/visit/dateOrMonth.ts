import { addMonths, format, isValid, parseISO } from 'date-fns';

const SHAPE = /^\d{4}-(0[1-9]|1[0-2])(-\d{2})?$/;

/** ISO text of a day ("2026-11-25") or, where the day is not known, of a month ("2026-11"). */
export function isDateOrMonth(text: string): boolean {
  return SHAPE.test(text) && isValid(parseISO(text));
}

/**
 * The month that lies so many months later; the day, known or not, plays no part.
 * @param text    ISO day or month
 * @param months  whole months
 * @returns       ISO month, "2027-05"
 */
export function monthAfter(text: string, months: number): string {
  return format(addMonths(parseISO(text.slice(0, 7)), months), 'yyyy-MM');
}

/** "June 2025" */
export const sayMonth = (text: string): string => format(parseISO(text.slice(0, 7)), 'MMMM yyyy');
