import type { Bound } from '../core/reading/types.ts';
import { withoutGuard } from './formulaGuard.ts';
import { type CsvLine, type CsvProblem, parseTable } from './parseCsv.ts';

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
  /** Why it is kept and does not count, where the table says that it does not. */
  readonly against?: string | undefined;
}

export interface StudyCsv {
  readonly lines: readonly StudyCsvLine[];
  readonly problems: readonly CsvProblem[];
}

type Column = 'run' | 'rlu' | 'operator' | 'lot' | 'taken at' | 'counted' | 'not counted because';
const NEEDED: readonly Column[] = ['run', 'rlu'];

/** Takes a table of readings apart: comma, semicolon or tab, with a first line that names the columns; other columns are passed over. */
export function readStudyCsv(text: string): StudyCsv {
  const read = parseTable(text);
  if ('problem' in read) return { lines: [], problems: [read.problem] };
  const [head, ...body] = read.lines;
  if (!head) return { lines: [], problems: [{ line: 0, message: 'there is nothing in it' }] };
  const names = head.cells.map((cell) =>
    plain(cell)
      .toLowerCase()
      .replaceAll(/[_\s]+/g, ' '),
  );
  const missing = NEEDED.filter((column) => !names.includes(column));
  if (missing.length > 0)
    return { lines: [], problems: [{ line: head.line, message: `the first line must name the columns ${NEEDED.join(' and ')}` }] };
  const lines: StudyCsvLine[] = [];
  const problems: CsvProblem[] = [];
  for (const row of body) {
    const judged = readLine(row, names);
    if (typeof judged === 'string') problems.push({ line: row.line, message: judged });
    else lines.push(judged);
  }
  if (body.length === 0) problems.push({ line: 0, message: 'there is no reading under the first line' });
  return { lines, problems };
}

function readLine({ line, cells }: CsvLine, names: readonly string[]): StudyCsvLine | string {
  // A number written 60,000 between commas would be read as 60.
  if (cells.slice(names.length).some((cell) => cell !== ''))
    return `${cells.length} columns where the first line names ${names.length}; a comma inside a number stands in quotation marks, or is left out`;
  const cellOf = (column: Column) => withoutGuard(cells[names.indexOf(column)] ?? '') || undefined;
  const [typedRun, typedRlu] = [plain(cellOf('run') ?? ''), plain(cellOf('rlu') ?? '')];
  const run = /^\d{1,6}$/.test(typedRun) ? Number(typedRun) : 0;
  if (run < 1) return `run: "${typedRun}" is not a number of the run sheet, from 1`;
  const rlu = readRlu(typedRlu);
  if (!rlu) return `rlu: "${typedRlu}" is not a whole number; write 5150, <40 or >60000`;
  const against = cellOf('counted')?.toLowerCase() === 'no' ? (cellOf('not counted because') ?? 'not counted in this table') : undefined;
  return { line, run: run - 1, ...rlu, operator: cellOf('operator'), lot: cellOf('lot'), takenAt: cellOf('taken at'), against };
}

/** "5150", "5,150", "5 150", "<40", ">60000". No decimals: 50.000 is fifty thousand to one hand and fifty to another. */
function readRlu(cell: string): Pick<StudyCsvLine, 'rlu' | 'bound'> | undefined {
  const match = /^([<>]?)\s*(\d{1,3}(?:[, ]\d{3})+|\d+)$/.exec(cell);
  if (!match) return undefined;
  const rlu = Number(match[2]?.replaceAll(/[, ]/g, ''));
  return { rlu, bound: match[1] === '<' ? 'at-most' : match[1] === '>' ? 'at-least' : 'exact' };
}

/** Spaces of fixed width come along from documents, between digits and around names of columns. */
const plain = (cell: string): string => cell.replaceAll(/[\u00a0\u2007\u202f]/g, ' ').trim();
