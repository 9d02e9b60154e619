import { CsvError, parse } from 'csv-parse/sync';

export interface CsvLine {
  /** Number of the line in the text, from 1; the last one where a cell runs over several. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** A quotation mark stands where none may stand. */
export interface CsvProblem {
  /** 0 = not known. */
  readonly line: number;
  readonly message: string;
}

const OPTIONS = { bom: true, relax_column_count: true, skip_empty_lines: true, skip_records_with_empty_values: true, trim: true } as const;

/** Every line that holds something; lines may be of unlike length. Nothing at all is read where a quotation mark is out of place. */
export function parseCsv(text: string, delimiter: string): { readonly lines: readonly CsvLine[] } | { readonly problem: CsvProblem } {
  try {
    // With `info` each record comes with its place; the types of the library do not say so.
    const records = parse(text, { ...OPTIONS, delimiter, info: true }) as unknown as {
      readonly record: readonly string[];
      readonly info: { readonly lines: number };
    }[];
    return { lines: records.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { problem: { line: typeof error.lines === 'number' ? error.lines : 0, message: 'a quotation mark stands alone in this line' } };
  }
}

/** The same, with whatever stands between the columns of the first line: a tab, else a semicolon, else a comma. */
export function parseTable(text: string) {
  const first = text.split(/\r?\n/).find((line) => line.trim() !== '') ?? '';
  return parseCsv(text, first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',');
}
