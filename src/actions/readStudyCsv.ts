import { CsvError, parse } from 'csv-parse/sync';
import type { Bound } from '../core/reading/types.ts';

/** One line of a table of readings, each cell read. */
export interface StudyCsvLine {
  /** Number of the line in the text, from 1. */
  readonly line: number;
  /** From 0; on the sheet, and in the text, from 1. */
  readonly run: number;
  readonly rlu: number;
  readonly bound: Bound;
  readonly takenAt?: string | undefined;
  readonly operator?: string | undefined;
  /** Name or id. */
  readonly lot?: string | undefined;
}

export interface StudyCsv {
  readonly lines: readonly StudyCsvLine[];
  readonly problems: readonly { readonly line: number; readonly message: string }[];
}

const COLUMNS = ['run', 'rlu', 'operator', 'lot', 'taken at'] as const;
type Column = (typeof COLUMNS)[number];
const NEEDED: readonly Column[] = ['run', 'rlu'];

interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Takes a table of readings apart: comma, semicolon or tab, with a first line that names the columns. */
export function readStudyCsv(text: string): StudyCsv {
  const read = parseRows(text);
  if ('problem' in read) return { lines: [], problems: [read.problem] };
  const [head, ...body] = read.rows;
  if (!head) return { lines: [], problems: [{ line: 0, message: 'there is nothing in it' }] };
  const names = head.cells.map((cell) => cell.toLowerCase().replaceAll(/[_\s]+/g, ' '));
  const missing = NEEDED.filter((column) => !names.includes(column));
  if (missing.length > 0)
    return { lines: [], problems: [{ line: head.line, message: `the first line must name the columns ${NEEDED.join(' and ')}` }] };
  const lines: StudyCsvLine[] = [];
  const problems: { line: number; message: string }[] = [];
  for (const row of body) {
    const judged = readLine(row, (column) => row.cells[names.indexOf(column)] || undefined);
    if (typeof judged === 'string') problems.push({ line: row.line, message: judged });
    else lines.push(judged);
  }
  if (body.length === 0) problems.push({ line: 0, message: 'there is no reading under the first line' });
  return { lines, problems };
}

function readLine({ line }: Row, cellOf: (column: Column) => string | undefined): StudyCsvLine | string {
  const run = /^\d{1,6}$/.test(cellOf('run') ?? '') ? Number(cellOf('run')) : 0;
  if (run < 1) return `run: "${cellOf('run') ?? ''}" is not a number of the run sheet, from 1`;
  const rlu = readRlu(cellOf('rlu') ?? '');
  if (!rlu) return `rlu: "${cellOf('rlu') ?? ''}" is not a number; write 5150, <40 or >60000`;
  return { line, run: run - 1, ...rlu, operator: cellOf('operator'), lot: cellOf('lot'), takenAt: cellOf('taken at') };
}

/** "5150", "5,150", "5 150", "<40", ">60000". */
function readRlu(cell: string): Pick<StudyCsvLine, 'rlu' | 'bound'> | undefined {
  const match = /^([<>]?)\s*(\d{1,3}(?:[, ]\d{3})+|\d+)(\.\d+)?$/.exec(cell);
  if (!match) return undefined;
  const rlu = Number(`${match[2]?.replaceAll(/[, ]/g, '')}${match[3] ?? ''}`);
  return { rlu, bound: match[1] === '<' ? 'at-most' : match[1] === '>' ? 'at-least' : 'exact' };
}

function parseRows(text: string): { readonly rows: readonly Row[] } | { readonly problem: StudyCsv['problems'][number] } {
  const clean = text.replaceAll('\ufeff', '').replaceAll(/[\u00a0\u2007\u202f]/g, ' ');
  const first = clean.split(/\r?\n/).find((line) => line.trim() !== '') ?? '';
  const delimiter = first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  const options = {
    delimiter,
    relax_column_count: true,
    skip_empty_lines: true,
    skip_records_with_empty_values: true,
    trim: true,
    info: true,
  };
  try {
    // With `info` each record comes with its place; the types of the library do not say so.
    const records = parse(clean, options) as unknown as { record: readonly string[]; info: { lines: number } }[];
    return { rows: records.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? error.lines : 0;
    return { problem: { line, message: 'a quotation mark stands alone in this line' } };
  }
}
