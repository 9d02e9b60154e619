import { AppError } from '../api/errors.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { isSameLot, lotKey } from '../core/shelf/lots.ts';
import type { Lot, LotStock } from '../core/shelf/types.ts';
import { findLots, findMove, findShelfItemHeld, type Move } from '../store/read/stock.ts';
import type { Db, StockMoveTable } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireDate, requireText } from './checks.ts';
import type { ActionContext, ChangeLog } from './context.ts';

/** More packs than this at once is a slip of the finger. */
const MOST_PACKS = 10_000;
const LONGEST_LOT = 60;

/** What every entry of the stock book takes. */
export interface StockEntry {
  readonly shelfItemId: string;
  /** Made by whoever asks, so that asking twice after a lost answer writes once. Absent = made here. */
  readonly id?: string | undefined;
  /** Local date of today at the practice. */
  readonly today: string;
}

export interface HeldItem {
  readonly item: ShelfItem;
  /** Undefined while the item is not counted. */
  readonly lots: readonly LotStock[] | undefined;
}

/** The item, which nobody else can move packs of until the transaction ends. @throws AppError SHELF_ITEM_NOT_FOUND */
export async function holdItem(trx: Db, scope: SiteScope, shelfItemId: string): Promise<HeldItem> {
  const entry = await findShelfItemHeld(trx, scope, shelfItemId);
  if (!entry) throw new AppError('SHELF_ITEM_NOT_FOUND', 'There is no such item on the shelf.');
  return { item: entry.body, lots: await findLots(trx, scope, shelfItemId) };
}

/** The entry that was written under this id before, if it was. */
export async function findWritten(trx: Db, scope: SiteScope, { id, shelfItemId }: StockEntry): Promise<Move | undefined> {
  const before = id === undefined ? undefined : await findMove(trx, scope, id);
  if (before && before.shelfItemId !== shelfItemId) throw new AppError('INPUT_INVALID', 'id: belongs to an entry of another item.');
  return before;
}

/** @throws AppError INPUT_INVALID */
export function requirePacks(value: number, { from = 1 }: { readonly from?: 0 | 1 } = {}): number {
  if (Number.isInteger(value) && value >= from && value <= MOST_PACKS) return value;
  throw new AppError('INPUT_INVALID', `packs: a whole number from ${from} to 10,000 is needed, not ${value}.`);
}

/** A lot as it is typed. */
export interface LotWords {
  readonly lot?: string | null | undefined;
  readonly expiry?: string | null | undefined;
}

/** What is printed on a pack; nothing at all is not known. @throws AppError INPUT_INVALID */
export function requireLotWords({ lot, expiry }: LotWords): Lot {
  const words = lot?.replaceAll(/\s+/g, ' ').trim() ?? '';
  return {
    lot: words === '' ? null : requireText('lot', words, LONGEST_LOT),
    expiry: expiry == null || expiry === '' ? null : requireDate('expiry', expiry),
  };
}

/** The lot as it stands in the book already, in its own spelling. @throws AppError INPUT_INVALID when its number stands there with another last day */
export function requireOneExpiry(wanted: Lot, lots: readonly LotStock[] = []): Lot {
  const same = lots.find((lot) => isSameLot(lot, wanted));
  if (same) return { lot: same.lot, expiry: same.expiry };
  const other = wanted.lot === null ? undefined : lots.find((lot) => lotKey(lot.lot) === lotKey(wanted.lot));
  if (!other) return wanted;
  throw new AppError(
    'INPUT_INVALID',
    `expiry: lot ${other.lot} stands here with ${other.expiry ?? 'no date'}. One of the two is misread: correct that lot, or type its date.`,
  );
}

export type NewMove = Lot &
  Pick<StockMoveTable, 'shelfItemId' | 'quantity' | 'reason' | 'onDate'> &
  Partial<Pick<StockMoveTable, 'id' | 'visitId' | 'note'>>;

export async function writeMoves(
  trx: Db,
  log: ChangeLog,
  { scope, actor, newId }: ActionContext,
  moves: readonly NewMove[],
): Promise<StockMoveTable[]> {
  const rows = moves.map((move) => ({
    ...{ visitId: null, note: null, takenBack: null },
    ...move,
    id: move.id ?? newId(),
    memberId: actor.memberId,
  }));
  const written = await insertRows(trx, scope, 'stockMove', rows);
  for (const row of written) log.row('stockMove', row, row.note);
  return written;
}
