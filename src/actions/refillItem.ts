import { AppError } from '../api/errors.ts';
import type { Lot, LotStock } from '../core/shelf/types.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { takeLots } from './dispenseItem.ts';
import type { Refills } from './refillFacts.ts';
import { hasRole, requireRight } from './rights.ts';
import { countGiven } from './signatureCovers.ts';
import { requireVisitToSign } from './signItem.ts';
import { findWritten, holdItem, type StockEntry, writeMoves } from './stockMoves.ts';

export interface RefillItemInput extends StockEntry {
  readonly visitId: string;
  /** The person was asked, and nothing is new. */
  readonly nothingNew: boolean;
  /** The lot in the hand; absent = first expiring, first out. */
  readonly lot?: Lot | undefined;
  /** As `findRefills` worked them out from the record. */
  readonly refills: Refills;
}

const ASKED = 'again within the course; asked, nothing new in pregnancy, allergy, medicines or illness';

/**
 * One more pack of what was agreed, on a later day. Whoever hands things out may give it, once the person was asked; what no signature
 * covers a dentist alone.
 * @returns the lots that it came from
 * @throws AppError NOT_ALLOWED, VISIT_NOT_FOUND, SHELF_ITEM_NOT_FOUND; INPUT_INVALID where nobody was asked; ITEM_STOPPED,
 * SIGNATURE_MISSING, STOCK_SHORT
 */
export async function refillItem(context: ActionContext, input: RefillItemInput): Promise<readonly LotStock[]> {
  const { scope, actor } = context;
  requireRight(actor, 'refillItem');
  const { visitId, shelfItemId, today, refills } = input;
  if (!input.nothingNew) throw new AppError('INPUT_INVALID', 'nothingNew: ask first whether anything is new, and give nothing if it is.');
  return inTransaction(context, 'refillItem', async (trx, log) => {
    await requireVisitToSign(trx, scope, visitId);
    const { item, lots } = await holdItem(trx, scope, shelfItemId);
    if (await findWritten(trx, scope, input)) return [];
    if (refills.notHere !== null) throw new AppError('ITEM_STOPPED', refills.notHere);
    const line = refills.lines.find((other) => other.shelfItemId === shelfItemId);
    if (!line) throw new AppError('ITEM_STOPPED', `${item.name} was not agreed at this visit.`);
    if (line.state === 'stopped') throw new AppError('ITEM_STOPPED', line.says);
    // Counted again while the item is held: two members at two counters give one covered pack once.
    const isCovered = line.coveredPacks === null || (await countGiven(trx, scope, visitId, shelfItemId)) < line.coveredPacks;
    if (!isCovered && !hasRole(actor, 'dentist'))
      throw new AppError('SIGNATURE_MISSING', `${item.name}: ${line.says || 'the last pack that the signature covers went a moment ago.'}`);
    const takes = takeLots(item, lots, { lot: input.lot, packs: 1, today });
    const note = isCovered ? ASKED : `${ASKED}; given by the dentist`;
    const moves = takes.map((take) => ({
      ...{ shelfItemId, visitId, note, lot: take.lot, expiry: take.expiry },
      ...{ quantity: -take.quantity, reason: 'dispensed' as const, onDate: today },
      ...(input.id === undefined ? {} : { id: input.id }),
    }));
    await writeMoves(trx, log, context, moves);
    return takes;
  });
}
