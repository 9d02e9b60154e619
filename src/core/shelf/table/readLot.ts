import { parseExpiry } from '../parseExpiry.ts';
import type { Lot } from '../types.ts';
import { LOT_COLUMNS } from './columns.ts';
import type { CellReader } from './readItem.ts';

const LONGEST_LOT = 60;
const MOST_PACKS = 10_000;

export interface ReadLot {
  readonly lot: Lot;
  readonly packs: number;
}

/** The lot in the cells of a line; undefined where the line has none, or where something in it is wrong. */
export function readLot(read: CellReader, cells: Readonly<Record<string, string>>): ReadLot | undefined {
  if (!hasLot(cells)) return undefined;
  const count = read.problems.length;
  const number = read.text('lot', LONGEST_LOT)?.replaceAll(/\s+/g, ' ') ?? null;
  const typed = read.text('last day');
  const expiry = typed === undefined ? null : parseExpiry(typed);
  if (expiry === undefined) read.fail('last day', `"${typed}" is not a date like 2027-05-31, or a month like 05/2027`);
  const packs = read.number('packs', { atLeast: 0, atMost: MOST_PACKS, whole: true });
  if (packs === undefined && read.problems.every(({ field }) => field !== 'packs'))
    read.fail('packs', 'how many packs of this lot are there?');
  if (expiry === undefined || packs === undefined || read.problems.length > count) return undefined;
  return { lot: { lot: number, expiry }, packs };
}

export const hasLot = (cells: Readonly<Record<string, string>>): boolean =>
  LOT_COLUMNS.some((column) => (cells[column] ?? '').trim() !== '');
