import { createHash } from 'node:crypto';
import { AppError } from '../api/errors.ts';
import type { LeafletNameOf, ShelfTableView } from '../api/shelfTable.ts';
import { listPackTraits } from '../core/regimen/listPackTraits.ts';
import type { RegimenTables } from '../core/regimen/tables.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { formatShelf, type ShelfEntry } from '../core/shelf/table/formatShelf.ts';
import { readShelfTable } from '../core/shelf/table/readShelfTable.ts';
import type { ShelfTable, TableItem, TableLot } from '../core/shelf/table/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry, listCatalog } from '../store/read/catalog.ts';
import { holdShelf, listCountedItems } from '../store/read/stock.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { withoutGuard } from './formulaGuard.ts';
import { parseTable } from './parseCsv.ts';
import { hasRole, requireRight } from './rights.ts';
import { type NewMove, writeMoves } from './stockMoves.ts';
import { writeCsv } from './writeCsv.ts';

export interface ShelfText {
  readonly text: string;
  /** Local date of today at the practice. */
  readonly today: string;
  readonly tables: Pick<RegimenTables, 'agents' | 'rules' | 'interactions' | 'allergenMatches' | 'cautions'>;
  readonly leafletNameOf: LeafletNameOf;
}

const NOTE = 'counted, from a table';

/** The shelf with its lots as a table; `previewShelf` reads it back. */
export async function exportShelf({ db, scope }: Pick<ActionContext, 'db' | 'scope'>): Promise<string> {
  return writeCsv(formatShelf(await listShelf(db, scope)));
}

/** What a table would do, and nothing written. `seen` tells what was looked at. */
export async function previewShelf(context: ActionContext, input: ShelfText): Promise<ShelfTableView> {
  requireRight(context.actor, 'importShelf');
  return judge(context.db, context, input);
}

/**
 * Takes the items and lots of a table, in one transaction: all of it, or nothing as soon as one line has a problem. A lot that the book
 * does not have comes in; of one that it has, the difference is put right.
 * @param seen  of the preview: what would be done now must be what was looked at
 * @throws AppError NOT_ALLOWED; CONFLICT when the shelf has changed since the table was looked at
 */
export async function importShelf(context: ActionContext, input: ShelfText & { readonly seen: string }): Promise<ShelfTableView> {
  requireRight(context.actor, 'importShelf');
  return inTransaction(context, 'importShelf', async (trx, log) => {
    await holdShelf(trx, context.scope);
    const table = await judge(trx, context, input);
    if (table.problems.length > 0) return table;
    if (table.seen !== input.seen)
      throw new AppError('CONFLICT', 'The shelf has changed since you looked at this table. Look at it again; nothing was written.');
    for (const entry of table.items) await writeItem({ trx, log, context, today: input.today }, entry);
    return table;
  });
}

async function listShelf(db: Db, scope: SiteScope): Promise<ShelfEntry[]> {
  const lots = new Map((await listCountedItems(db, scope)).map((counted) => [counted.shelfItemId, counted.lots]));
  return (await listCatalog(db, scope, 'shelf-item')).map(({ id, body }) => ({ item: body, lots: lots.get(id) }));
}

async function judge(db: Db, { scope, actor }: ActionContext, { text, today, tables, leafletNameOf }: ShelfText): Promise<ShelfTableView> {
  const read = parseTable(text);
  if ('problem' in read) return withSeen({ items: [], problems: [{ line: read.problem.line, field: 'line', says: read.problem.message }] });
  const lines = read.lines.map(({ line, cells }) => ({ line, cells: cells.map(withoutGuard) }));
  const { agents } = tables;
  const setting = { agents, traits: listPackTraits(tables), leafletNameOf, mayFree: hasRole(actor, 'dentist'), today };
  return withSeen(readShelfTable(lines, { ...setting, shelf: await listShelf(db, scope) }));
}

function withSeen(table: ShelfTable): ShelfTableView {
  return { ...table, seen: createHash('sha256').update(JSON.stringify(table)).digest('hex') };
}

interface Write {
  readonly trx: Db;
  readonly log: ChangeLog;
  readonly context: ActionContext;
  readonly today: string;
}

async function writeItem(write: Write, { kind, item: read, lots }: TableItem): Promise<void> {
  const { trx, log, context, today } = write;
  const item: ShelfItem = read.id === '' ? { ...read, id: context.newId() } : read;
  if (kind !== 'same') {
    const before = await findCatalogEntry(trx, context.scope, 'shelf-item', item.id);
    const entry = { kind: 'shelf-item', id: item.id, body: JSON.stringify(item) } as const;
    const row = await saveCatalogRow(trx, context.scope, entry, before?.version ?? 0);
    if (!row) throw new ConflictError('This item', item, before);
    log.row('catalog', row);
  }
  const moves = lots.flatMap((lot) => toMove(lot, item.id, today));
  if (moves.length > 0) await writeMoves(trx, log, context, moves);
}

function toMove({ lot, expiry, packs, there }: TableLot, shelfItemId: string, onDate: string): NewMove[] {
  const quantity = packs - (there ?? 0);
  if (quantity === 0) return [];
  return [{ lot, expiry, shelfItemId, quantity, reason: there === null ? 'received' : 'corrected', onDate, note: NOTE }];
}
