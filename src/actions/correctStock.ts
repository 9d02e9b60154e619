import { AppError } from '../api/errors.ts';
import { isSameLot } from '../core/shelf/lots.ts';
import type { Lot } from '../core/shelf/types.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';
import {
  findWritten,
  holdItem,
  type LotWords,
  type NewMove,
  requireLotWords,
  requireOneExpiry,
  requirePacks,
  type StockEntry,
  writeMoves,
} from './stockMoves.ts';

export interface CorrectStockInput extends StockEntry {
  /** As it stands in the book. */
  readonly lot: Lot;
  /**
   * `corrected`: `packs` is what is really there. `expired` (thrown away), `returned` (to the supplier), `dispensed` (used up in the practice,
   * at no one visit): `packs` is what went.
   */
  readonly as: 'corrected' | 'expired' | 'returned' | 'dispensed';
  readonly packs: number;
  /** What the packs really say, where lot or last day were misread. With `corrected` only. */
  readonly reads?: LotWords | undefined;
  readonly reason?: string | undefined;
}

/**
 * Puts the book right where the cupboard says otherwise, or takes packs out that nobody was given.
 * @throws AppError NOT_ALLOWED, SHELF_ITEM_NOT_FOUND, REASON_REQUIRED for a correction; STOCK_SHORT for more packs than there are;
 * INPUT_INVALID with the field
 */
export async function correctStock(context: ActionContext, input: CorrectStockInput): Promise<void> {
  const { scope, actor } = context;
  requireRight(actor, 'correctStock');
  const { shelfItemId, as, today } = input;
  const note = as === 'corrected' || input.reason?.trim() ? requireReason(input.reason) : null;
  const lot = requireLotWords(input.lot);
  const packs = requirePacks(input.packs, { from: as === 'corrected' ? 0 : 1 });
  await inTransaction(context, 'correctStock', async (trx, log) => {
    const { item, lots = [] } = await holdItem(trx, scope, shelfItemId);
    if (await findWritten(trx, scope, input)) return;
    const there = lots.find((other) => isSameLot(other, lot))?.quantity ?? 0;
    const entry = { shelfItemId, reason: as, onDate: today, note };
    if (as !== 'corrected') {
      if (packs > there) throw new AppError('STOCK_SHORT', `packs: ${there} of ${item.name} in this lot, not ${packs}.`);
      await writeMoves(trx, log, context, [withId({ ...entry, ...lot, quantity: -packs }, input.id)]);
      return;
    }
    const others = lots.filter((other) => !isSameLot(other, lot));
    const reads = requireOneExpiry(input.reads === undefined ? lot : requireLotWords({ ...lot, ...input.reads }), others);
    const isRelabelled = !isSameLot(reads, lot);
    const moves = isRelabelled
      ? [
          { ...lot, quantity: -there },
          { ...reads, quantity: packs },
        ]
      : [{ ...lot, quantity: packs - there }];
    const changed = moves.filter(({ quantity }) => quantity !== 0);
    if (changed.length === 0) throw new AppError('INPUT_INVALID', `packs: ${packs} is what stands there already.`);
    await writeMoves(
      trx,
      log,
      context,
      changed.map((move, i) => withId({ ...entry, ...move }, i === 0 ? input.id : undefined)),
    );
  });
}

const withId = (move: NewMove, id: string | undefined): NewMove => (id === undefined ? move : { ...move, id });
