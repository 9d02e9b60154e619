import { stringify } from 'csv-stringify/sync';
import { guardFormula } from './formulaGuard.ts';

export type CsvCell = string | number | null | undefined;

/**
 * A table for spreadsheets and for `parseCsv`: commas, RFC 4180 line ends, texts in quotation marks, none of them taken for a formula.
 * Numbers stand bare, so that a negative one stays a number; what is missing is an empty cell.
 */
export function writeCsv(rows: readonly (readonly CsvCell[])[]): string {
  return stringify([...rows], { bom: true, record_delimiter: 'windows', quoted_string: true, cast: { string: guardFormula } });
}
