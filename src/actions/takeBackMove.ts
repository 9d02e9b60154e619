import { AppError } from '../api/errors.ts';
import { isSameLot } from '../core/shelf/lots.ts';
import { ConflictError } from '../store/errors.ts';
import { findMove, type Move } from '../store/read/stock.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { RIGHTS, requireRight } from './rights.ts';
import { holdItem } from './stockMoves.ts';

export interface TakeBackMoveInput {
  readonly moveId: string;
  /** Local date of today at the practice. */
  readonly today: string;
  /** Not needed for one's own entry of the day. */
  readonly reason?: string | undefined;
}

const AT_ONCE = 'taken back the same day';

/**
 * An entry of the stock book was wrong: it stays, with the reason, and counts no more. Packs that were given come back to their lot.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, STOCK_MOVE_NOT_FOUND; STOCK_SHORT when packs of this entry have gone since
 */
export async function takeBackMove(context: ActionContext, { moveId, today, ...input }: TakeBackMoveInput): Promise<void> {
  const { scope, actor } = context;
  requireRight(actor, 'takeBackMove');
  await inTransaction(context, 'takeBackMove', async (trx, log) => {
    const found = await findMove(trx, scope, moveId);
    if (!found) throw new AppError('STOCK_MOVE_NOT_FOUND', 'There is no such entry in the stock book.');
    const { item, lots = [] } = await holdItem(trx, scope, found.shelfItemId);
    // Only what was read while the item is held is sure to stay.
    const move = (await findMove(trx, scope, moveId)) ?? found;
    if (move.takenBack !== null) return;
    const reason = reasonFor(context, move, today, input.reason);
    const left = (lots.find((lot) => isSameLot(lot, move))?.quantity ?? 0) - move.quantity;
    if (left < 0) {
      const says = `packs: ${-left} of the ${move.quantity} packs of ${item.name} have gone since. Take those entries back first, or correct the lot.`;
      throw new AppError('STOCK_SHORT', says);
    }
    const row = await updateRow(trx, scope, 'stockMove', move, { takenBack: reason });
    if (!row) throw new ConflictError('This entry', null, move);
    log.row('stockMove', row, reason);
  });
}

function reasonFor({ actor }: ActionContext, { memberId, onDate }: Move, today: string, reason: string | undefined): string {
  if (memberId === actor.memberId && onDate === today) return reason?.trim() ? requireReason(reason) : AT_ONCE;
  const allowed: readonly string[] = RIGHTS.correctStock;
  if (!actor.roles.some((role) => allowed.includes(role)))
    throw new AppError(
      'NOT_ALLOWED',
      `Only a ${RIGHTS.correctStock.join(', a ')} may take back what somebody else entered, or on another day.`,
    );
  return requireReason(reason);
}
