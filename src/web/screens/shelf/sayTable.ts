import type { CellChange, ShelfTable, TableItem, TableLot } from '../../../core/shelf/table/types.ts';
import { plural } from '../../format.ts';
import { sayLot } from './sayStock.ts';

/** What a table would write. */
export function countWork({ items }: Pick<ShelfTable, 'items'>) {
  const added = items.filter(({ kind }) => kind === 'new').length;
  const changed = items.filter(({ kind }) => kind === 'changed').length;
  const lots = items.flatMap((item) => item.lots).filter(({ packs, there }) => packs !== (there ?? 0)).length;
  return { added, changed, lots, all: added + changed + lots };
}

/** "2 new items, 1 change and 3 lots". */
export function sayWork(table: Pick<ShelfTable, 'items'>): string {
  const { added, changed, lots } = countWork(table);
  const parts = [
    added > 0 && plural(added, 'new item'),
    changed > 0 && plural(changed, 'changed item'),
    lots > 0 && plural(lots, 'lot'),
  ].filter((part) => part !== false);
  return parts.length === 0 ? 'nothing' : [parts.slice(0, -1).join(', '), parts.at(-1)].filter(Boolean).join(' and ');
}

export function sayRead(table: ShelfTable): string {
  const count = table.problems.length;
  if (count > 0) return `${plural(count, 'place')} to put right. Nothing is written until all of the table can be.`;
  return countWork(table).all === 0
    ? 'All of it stands on the shelf already.'
    : `It would write ${sayWork(table)}. Nothing is written yet.`;
}

/** What a line does to its item. */
export function sayItemWork({ kind, changes }: TableItem): readonly string[] {
  if (kind === 'new') return ['new'];
  return kind === 'same' ? ['as it stands'] : changes.map(sayChange);
}

const sayChange = ({ field, from, to }: CellChange): string => `${field}: ${from || 'not known'}, now ${to || 'not known'}`;

export function sayLotWork(lot: TableLot): string {
  const { there, packs, isExpired } = lot;
  const does =
    there === null
      ? `${plural(packs, 'pack')} come in`
      : there === packs
        ? `${plural(packs, 'pack')}, as in the book`
        : `${there} in the book, now ${packs}`;
  return `${sayLot(lot)}: ${does}${isExpired ? '; past its last day, never given' : ''}`;
}
