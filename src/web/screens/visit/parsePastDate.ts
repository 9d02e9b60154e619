import { isDateOrMonth } from '../../../core/visit/dateOrMonth.ts';

export interface PastDates {
  /** ISO local date of the visit. */
  readonly onDate: string;
  readonly birthDate?: string | undefined;
}

const NO_DATE = 'A month and a year are needed here, like 0625 or 6/2025, or a day like 2025-06-14.';

/**
 * A day or month in the past as typed: "0625", "6/25", "06.2025", "2025-06", "2025-06-14". Day and month in figures are not guessed at,
 * since they stand in either order in different places. Two figures for a year are the last such year that is not in the future.
 */
export function parsePastDate(typed: string, { onDate, birthDate }: PastDates): { readonly value: string } | { readonly problem: string } {
  const text = typed.trim();
  const value = isDateOrMonth(text) ? text : monthOf(text, onDate);
  if (value === undefined || !isDateOrMonth(value)) return { problem: NO_DATE };
  if (value > onDate.slice(0, value.length)) return { problem: 'That lies after this visit.' };
  return birthDate !== undefined && value < birthDate.slice(0, value.length) ? { problem: 'That lies before the birth.' } : { value };
}

function monthOf(text: string, onDate: string): string | undefined {
  const found = /^(\d{2})(\d{2})$/.exec(text) ?? /^(\d{1,2})[/. -](\d{2}|\d{4})$/.exec(text);
  const [, month, year] = found ?? [];
  if (month === undefined || year === undefined) return undefined;
  const mm = month.padStart(2, '0');
  if (year.length === 4) return `${year}-${mm}`;
  const century = onDate.slice(0, 2);
  const thisCentury = `${century}${year}-${mm}`;
  return thisCentury > onDate.slice(0, 7) ? `${Number(century) - 1}${year}-${mm}` : thisCentury;
}
