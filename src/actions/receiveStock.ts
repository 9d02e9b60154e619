import { AppError } from '../api/errors.ts';
import { isExpired } from '../core/shelf/lots.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';
import {
  findWritten,
  holdItem,
  type LotWords,
  requireLotWords,
  requireOneExpiry,
  requirePacks,
  type StockEntry,
  writeMoves,
} from './stockMoves.ts';

/** Lot and last day as printed; absent or empty = not known. */
export interface ReceiveStockInput extends StockEntry, LotWords {
  /** Whole packs. */
  readonly packs: number;
}

/**
 * Packs that came in, or that stand in the cupboard when the practice begins to count. From the first entry on an item is in stock by its
 * packs and no longer by the yes or no on it.
 * @throws AppError NOT_ALLOWED, SHELF_ITEM_NOT_FOUND, INPUT_INVALID with the field: no whole number, no date, a last day that is past, a
 * lot that stands there with another last day
 */
export async function receiveStock(context: ActionContext, { packs, today, ...input }: ReceiveStockInput): Promise<{ id: string }> {
  const { scope, actor } = context;
  requireRight(actor, 'receiveStock');
  const { shelfItemId } = input;
  const quantity = requirePacks(packs);
  const wanted = requireLotWords(input);
  if (isExpired(wanted, today))
    throw new AppError('INPUT_INVALID', `expiry: ${wanted.expiry} is past. What is past its last day is not put on the shelf.`);
  return inTransaction(context, 'receiveStock', async (trx, log) => {
    const { lots } = await holdItem(trx, scope, shelfItemId);
    const before = await findWritten(trx, scope, { ...input, today });
    if (before) return { id: before.id };
    const move = { ...requireOneExpiry(wanted, lots), shelfItemId, quantity, reason: 'received', onDate: today } as const;
    const [row] = await writeMoves(trx, log, context, [input.id === undefined ? move : { ...move, id: input.id }]);
    if (!row) throw new AppError('INTERNAL', 'The entry was written and could not be read.');
    return { id: row.id };
  });
}
