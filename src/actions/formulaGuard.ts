/** What a spreadsheet takes for the beginning of a formula, in both widths; a tab or a line end before it is passed over. */
const STARTS = String.raw`[=+\-@＝＋－＠\t\r\n]`;
const NEEDS_GUARD = new RegExp(`^'*${STARTS}`);
const IS_GUARDED = new RegExp(`^'+${STARTS}`);

/** A text that a spreadsheet would reckon with gets an apostrophe in front, one more where it has some already, so that nothing is lost. */
export function guardFormula(text: string): string {
  return NEEDS_GUARD.test(text) ? `'${text}` : text;
}

/** The text as it was before `guardFormula`. */
export function withoutGuard(cell: string): string {
  return IS_GUARDED.test(cell) ? cell.slice(1) : cell;
}
