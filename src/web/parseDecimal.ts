/**
 * A number as people type it: "0.32", "0,32", "22 600". A single comma before three digits ("1,450") could mean either, so it is not taken.
 * @returns undefined for anything else, and for nothing typed
 */
export function parseDecimal(typed: string): number | undefined {
  const text = typed.trim();
  if (/^\d{1,3}(\s\d{3})+(\.\d+)?$/.test(text)) return Number(text.replace(/\s/g, ''));
  if (isAmbiguous(text) || !/^\d{1,9}([.,]\d{1,9})?$/.test(text)) return undefined;
  return Number(text.replace(',', '.'));
}

/** "1,450" is one and a bit to some and over a thousand to others. */
export const isAmbiguous = (typed: string): boolean => /^\s*[1-9]\d{0,2}(,\d{3})+\s*$/.test(typed);

/** Why a typed number was not taken, with what to type. */
export const sayNotANumber = (typed: string): string =>
  isAmbiguous(typed) ? `Write ${typed.trim().replaceAll(',', '')} without the comma.` : 'A number like 12 or 0.5 is needed.';
