import type { ShelfItem } from '../../regimen/types.ts';
import { COLUMNS, cellsOf, ITEM_COLUMNS, type ItemCells } from './columns.ts';
import type { ShelfEntry } from './formatShelf.ts';
import { listOpen } from './listOpen.ts';
import { type FieldProblem, plain, readItem } from './readItem.ts';
import { hasLot } from './readLot.ts';
import { readTableLot } from './readTableLot.ts';
import type { LineProblem, ShelfTable, TableItem, TableLine, TableSetting } from './types.ts';

const OTHER_CELLS = ITEM_COLUMNS.filter((column) => column !== 'id' && column !== 'name');

/**
 * Reads a table of the shelf against the shelf as it stands, and says what it would do. A column that the table does not have leaves what
 * is there as it is; an empty cell of a column that it has makes it not known. Packs are what is in the cupboard now, lot by lot; a lot
 * that the table does not name stays as it is.
 */
export function readShelfTable([head, ...body]: readonly TableLine[], setting: TableSetting): ShelfTable {
  if (!head) return { items: [], problems: [{ line: 0, field: 'table', says: 'there is nothing in it' }] };
  const names = head.cells.map((cell) =>
    plain(cell)
      .toLowerCase()
      .replaceAll(/[_\s]+/g, ' '),
  );
  const problems = headProblems(head.line, names);
  if (body.length === 0) problems.push({ line: 0, field: 'table', says: 'there is no line under the names of the columns' });
  if (problems.length > 0) return { items: [], problems };
  const state: State = { setting, names, items: [], problems };
  for (const line of body) takeLine(line, state);
  return { items: state.items, problems: state.problems };
}

function headProblems(line: number, names: readonly string[]): LineProblem[] {
  const known: readonly string[] = COLUMNS;
  const problems = names.flatMap((name, at) => {
    if (names.indexOf(name) !== at) return [{ line, field: name, says: 'two columns have this name' }];
    if (known.includes(name)) return [];
    return [{ line, field: name || `column ${at + 1}`, says: `no column of this table; it is one of: ${known.join(', ')}` }];
  });
  if (!names.includes('id') && !names.includes('name')) problems.push({ line, field: 'id', says: 'a column id or name is needed' });
  return problems;
}

interface State {
  readonly setting: TableSetting;
  readonly names: readonly string[];
  readonly items: TableItem[];
  readonly problems: LineProblem[];
}

type Cells = Readonly<Record<string, string>>;

function takeLine({ line, cells: row }: TableLine, state: State): void {
  const { names, problems, items } = state;
  const fail = (found: readonly FieldProblem[]) => problems.push(...found.map((problem) => ({ line, ...problem })));
  // A number written 60,000 between commas would move every cell behind it.
  if (row.length !== names.length) {
    const says = `${row.length} cells where the first line names ${names.length}; a comma inside a number or a name stands in quotation marks`;
    fail([{ field: 'line', says }]);
    return;
  }
  const cells: Cells = Object.fromEntries(names.map((name, at) => [name, row[at] ?? '']));
  const isLotOnly = OTHER_CELLS.every((column) => isBlank(cells[column])) && hasLot(cells);
  const known = findKnown(cells, state);
  if (typeof known === 'string') {
    fail([{ field: isBlank(cells.id) ? 'name' : 'id', says: known }]);
    return;
  }
  if (isLotOnly) {
    takeLotLine({ line, cells }, known, state);
    return;
  }
  if (known.inTable) {
    const says = `${known.inTable.item.name} stands in line ${known.inTable.line} already. Is it the same item? One line is for the item; further lots need only id, lot, last day and packs`;
    fail([{ field: isBlank(cells.id) ? 'name' : 'id', says }]);
    return;
  }
  const entry = known.onShelf;
  const isCounted = entry?.lots !== undefined || hasPacks(cells);
  const { item, problems: found } = readItem(fillCells(cells, entry), state.setting, { before: entry?.item, isCounted });
  fail(found);
  const lot = readTableLot({ line, cells }, { entry, before: [] }, { today: state.setting.today, problems });
  const shown = item ?? { ...(entry?.item ?? BLANK), id: cells.id?.trim() ?? '', name: cells.name?.trim() || (entry?.item.name ?? '') };
  items.push({ line, ...compare(shown, entry, state), lots: lot ? [lot] : [] });
}

/** What a faulty line is remembered by, so that a second one for the same item is asked about as well. */
const BLANK: ShelfItem = {
  ...{ id: '', name: '', agentId: '', form: 'paste', traits: undefined, inStock: false, release: 'dentist', meets: [] },
  leafletName: { en: '', es: '' },
  use: { timesPerDay: 0, amount: '' },
};

/** A lot in a line of its own, of an item above or on the shelf. */
function takeLotLine({ line, cells }: { readonly line: number; readonly cells: Cells }, known: Known, state: State): void {
  const at = known.inTable ? state.items.indexOf(known.inTable) : state.items.length;
  const entry = known.onShelf;
  if (!known.inTable && !entry) {
    const field = isBlank(cells.id) ? 'name' : 'id';
    state.problems.push({ line, field, says: `"${(cells.id || cells.name || '').trim()}" is neither on the shelf nor in a line above` });
    return;
  }
  const lot = readTableLot(
    { line, cells },
    { entry, before: known.inTable?.lots ?? [] },
    { today: state.setting.today, problems: state.problems },
  );
  if (known.inTable) state.items[at] = { ...known.inTable, lots: [...known.inTable.lots, ...(lot ? [lot] : [])] };
  else if (entry) state.items.push({ line, kind: 'same', item: entry.item, changes: [], open: [], lots: lot ? [lot] : [] });
}

interface Known {
  readonly onShelf: ShelfEntry | undefined;
  readonly inTable: TableItem | undefined;
}

/** By its id, or where the line has none, by its name. */
function findKnown(cells: Cells, { setting: { shelf }, items }: State): Known | string {
  const id = plain(cells.id ?? '');
  const name = nameKey(cells.name ?? '');
  if (id !== '') {
    const onShelf = shelf.find(({ item }) => item.id === id);
    const twin = name === '' ? undefined : items.find(({ item }) => nameKey(item.name) === name && item.id !== id);
    if (twin) return `${twin.item.name} stands in line ${twin.line} with another id. Is it the same item?`;
    const other = onShelf || name === '' ? undefined : shelf.find(({ item }) => nameKey(item.name) === name);
    if (other) return `${other.item.name} is on the shelf as ${other.item.id}. Is it the same item?`;
    return { onShelf, inTable: items.find(({ item }) => item.id === id) };
  }
  if (name === '') return 'which item is it? An id or a name is needed';
  const named = shelf.filter(({ item }) => nameKey(item.name) === name);
  if (named.length > 1) return `${named.length} items on the shelf have this name; which id is it?`;
  return { onShelf: named[0], inTable: items.find(({ item }) => nameKey(item.name) === name) };
}

const isBlank = (cell: string | undefined): boolean => (cell ?? '').trim() === '';
const nameKey = (name: string): string => plain(name).replaceAll(/\s+/g, ' ').toLowerCase();
const hasPacks = (cells: Cells): boolean => hasLot(cells) && plain(cells.packs ?? '') !== '0';

/** Cells that the table has no column for are as they stand on the shelf. */
function fillCells(cells: Cells, entry: ShelfEntry | undefined): ItemCells {
  const stood = entry && cellsOf(entry.item, entry.lots !== undefined);
  const filled = Object.fromEntries(ITEM_COLUMNS.map((column) => [column, cells[column] ?? stood?.[column] ?? ''])) as ItemCells;
  // A line that tells its item by one of the two leaves the other as it is.
  return { ...filled, id: filled.id.trim() || (stood?.id ?? ''), name: filled.name.trim() || (stood?.name ?? '') };
}

function compare(
  item: ShelfItem,
  entry: ShelfEntry | undefined,
  { setting }: State,
): Pick<TableItem, 'kind' | 'item' | 'changes' | 'open'> {
  if (!entry) return { kind: 'new', item, changes: [], open: listOpen(item, setting.agents) };
  const isCounted = entry.lots !== undefined;
  const [from, to] = [cellsOf(entry.item, isCounted), cellsOf(item, isCounted)];
  const changes = ITEM_COLUMNS.filter((field) => from[field] !== to[field]).map((field) => ({ field, from: from[field], to: to[field] }));
  if (changes.length === 0) return { kind: 'same', item: entry.item, changes, open: [] };
  return { kind: 'changed', item, changes, open: listOpen(item, setting.agents) };
}
