import type { ShelfItem } from '../../regimen/types.ts';
import type { LotStock } from '../types.ts';
import { COLUMNS, cellsOf, ITEM_COLUMNS } from './columns.ts';

export interface ShelfEntry {
  readonly item: ShelfItem;
  /** Undefined = not counted. */
  readonly lots: readonly LotStock[] | undefined;
}

/**
 * The shelf as a table that `readShelfTable` reads back: a line for each item with its first lot, and one for each further lot.
 * @returns cells as text, the names of the columns first
 */
export function formatShelf(entries: readonly ShelfEntry[]): readonly (readonly string[])[] {
  return [
    COLUMNS,
    ...entries.flatMap(({ item, lots }) => {
      const cells = cellsOf(item, lots !== undefined);
      const [first, ...rest] = lots ?? [];
      const more = ITEM_COLUMNS.map((column) => (column === 'id' || column === 'name' ? cells[column] : ''));
      return [
        [...ITEM_COLUMNS.map((column) => cells[column]), ...(first ? lotCells(first) : ['', '', lots === undefined ? '' : '0'])],
        ...rest.map((lot) => [...more, ...lotCells(lot)]),
      ];
    }),
  ];
}

const lotCells = ({ lot, expiry, quantity }: LotStock): readonly string[] => [lot ?? '', expiry ?? '', String(quantity)];
