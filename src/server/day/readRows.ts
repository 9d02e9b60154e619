import { parseCsv } from '../../actions/parseCsv.ts';
import type { ColumnUse, ReadList } from '../../api/day.ts';
import { readBirthday } from '../../core/day/birthday.ts';
import { readClockTime } from '../../core/day/clockTime.ts';
import type { DayRow, RowField } from '../../core/day/dayRow.ts';

type Separator = ReadList['separator'];

const SEPARATORS: Readonly<Record<Separator, string>> = { tab: '\t', semicolon: ';', comma: ',' };
const LINES_TO_LOOK_AT = 30;

/** @param given  what the columns are, where somebody has said so */
export function readRows(text: string, given?: readonly ColumnUse[]): ReadList {
  const clean = cleanText(text);
  const separator = findSeparator(clean);
  const records = parseRecords(clean, separator);
  const first = records.find(({ problem }) => problem === undefined)?.cells ?? [];
  const width = mostCommon(records.filter(({ problem }) => problem === undefined).map(({ cells }) => cells.length)) ?? 1;
  const header = readHeader(first);
  const body = header ? records.filter(({ cells }) => cells !== first) : records;
  const columns = toWidth(given ?? header ?? guessColumns(body, width), width);
  return {
    separator,
    hasHeader: header !== undefined,
    columns,
    examples: Array.from({ length: width }, (_, index) => first[index] ?? ''),
    rows: body.map((record) => toDayRow(record, columns)),
  };
}

interface Line {
  /** Number of the line in the text, from 1. */
  readonly row: number;
  readonly cells: readonly string[];
  readonly problem?: string;
}

/** Marks of direction and zero width come along from documents and would keep equal names apart; a hard space is a space. */
function cleanText(text: string): string {
  return text
    .replaceAll(/[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g, '')
    .replaceAll(/[\u00a0\u2007\u202f]/g, ' ')
    .replaceAll(/\r\n?/g, '\n');
}

/** Strictly; where quotation marks are wrong somewhere, line by line, so that one bad line costs no other. */
function parseRecords(text: string, separator: Separator): readonly Line[] {
  const whole = parseCsv(text, SEPARATORS[separator]);
  if ('lines' in whole) return whole.lines.map(({ line, cells }) => ({ row: line, cells }));
  return text.split('\n').flatMap((line, index) => parseLine(line, index + 1, separator));
}

function parseLine(line: string, row: number, separator: Separator): Line[] {
  if (line.trim() === '') return [];
  const read = parseCsv(line, SEPARATORS[separator]);
  if ('lines' in read) return read.lines.map(({ cells }) => ({ row, cells }));
  return [{ row, cells: [line.trim()], problem: read.problem.message }];
}

/** The one that cuts the lines into the most columns, the same number in most lines. */
function findSeparator(text: string): Separator {
  const sample = text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .slice(0, LINES_TO_LOOK_AT)
    .join('\n');
  let best: { separator: Separator; score: number } = { separator: 'comma', score: 0 };
  for (const separator of Object.keys(SEPARATORS) as Separator[]) {
    const widths = parseRecords(sample, separator).map(({ cells }) => cells.length);
    const width = mostCommon(widths) ?? 1;
    const score = width < 2 ? 0 : width * widths.filter((w) => w === width).length;
    if (score > best.score) best = { separator, score };
  }
  return best.separator;
}

function mostCommon(numbers: readonly number[]): number | undefined {
  const counts = new Map<number, number>();
  for (const number of numbers) counts.set(number, (counts.get(number) ?? 0) + 1);
  return [...counts].sort(([a, timesA], [b, timesB]) => timesB - timesA || b - a)[0]?.[0];
}

const HEADER_WORDS: Readonly<Record<RowField, RegExp>> = {
  time: /^(time|at|start|from|appointment|appt)\b/i,
  chartNumber: /\b(chart|number|no|nr|file|id|ref)\b|#/i,
  name: /\b(name|patient|person)\b/i,
  birthday: /\b(birth|birthday|birthdate|born|dob)\b/i,
};
const FIELDS = ['time', 'birthday', 'chartNumber', 'name'] as const;

/** What each column is called, if the first row is a header: it names something, and none of its cells is a time or a date. */
function readHeader(cells: readonly string[]): readonly ColumnUse[] | undefined {
  if (cells.some((cell) => readClockTime(cell) !== undefined || readBirthday(cell).kind !== 'unreadable')) return undefined;
  const uses = cells.map((cell): ColumnUse => FIELDS.find((field) => HEADER_WORDS[field].test(cell)) ?? 'not-used');
  return uses.filter((use) => use !== 'not-used').length >= Math.min(2, cells.length) && uses.length > 0 ? once(uses) : undefined;
}

/** By what the columns hold. Numbers of four digits may be times or chart numbers: a time with a sign between is the stronger. */
function guessColumns(lines: readonly Line[], width: number): readonly ColumnUse[] {
  const columns = Array.from({ length: width }, (_, index) => lines.map(({ cells }) => cells[index] ?? '').filter((cell) => cell !== ''));
  const uses = new Array<ColumnUse>(width).fill('not-used');
  const take = (field: RowField, weigh: (cell: string) => number) => {
    const shares = columns.map((cells, index) =>
      uses[index] === 'not-used' && cells.length > 0 ? cells.reduce((sum, cell) => sum + weigh(cell), 0) / cells.length : 0,
    );
    const best = shares.indexOf(Math.max(...shares));
    if ((shares[best] ?? 0) > 0.3) uses[best] = field;
  };
  take('birthday', (cell) => (/^\D*\d+\D+\d+\D+\d+\D*$|^\d{8}$/.test(cell) ? 1 : 0));
  take('time', (cell) => (readClockTime(cell) === undefined ? 0 : /\D/.test(cell) ? 1 : 0.6));
  take('name', (cell) => (/\p{L}/u.test(cell) && !/\d/.test(cell) ? 1 : 0));
  take('chartNumber', (cell) => (/\d/.test(cell) ? 1 : 0));
  return uses;
}

/** Each field is one column at most: the first that has it. */
function once(uses: readonly ColumnUse[]): readonly ColumnUse[] {
  return uses.map((use, index) => (uses.indexOf(use) === index ? use : 'not-used'));
}

function toWidth(uses: readonly ColumnUse[], width: number): readonly ColumnUse[] {
  return once(Array.from({ length: width }, (_, index) => uses[index] ?? 'not-used'));
}

function toDayRow({ row, cells, problem }: Line, columns: readonly ColumnUse[]): DayRow {
  if (problem !== undefined) return { row, time: '', chartNumber: '', name: cells[0] ?? '', birthday: '', problem };
  const cellOf = (field: RowField) => cells[columns.indexOf(field)] ?? '';
  const fields = { time: cellOf('time'), chartNumber: cellOf('chartNumber'), name: cellOf('name'), birthday: cellOf('birthday') };
  const surplus = cells.slice(columns.length).filter((cell) => cell !== '');
  if (surplus.length === 0) return { row, ...fields };
  const whole = cells.join(' | ');
  return { row, ...fields, problem: `${cells.length} columns where the list has ${columns.length}: ${whole}` };
}
