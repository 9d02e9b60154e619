import { AppError } from '../api/errors.ts';
import type { ShelfItem } from '../core/regimen/types.ts';
import { allocate } from '../core/shelf/allocate.ts';
import { countPacks, isExpired, isSameLot } from '../core/shelf/lots.ts';
import type { Lot, LotStock } from '../core/shelf/types.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import type { GivingFacts } from './givingFacts.ts';
import { hasRole, requireRight } from './rights.ts';
import { countGiven } from './signatureCovers.ts';
import { requireVisitToSign } from './signItem.ts';
import { findWritten, holdItem, requirePacks, type StockEntry, writeMoves } from './stockMoves.ts';

export interface DispenseItemInput extends StockEntry {
  readonly visitId: string;
  readonly packs?: number | undefined;
  /** The lot in the hand; absent = first expiring, first out. */
  readonly lot?: Lot | undefined;
  /** Needed for what waits for a signature, or stands outside the plan. */
  readonly reason?: string | undefined;
  /** As `findGivingFacts` worked them out from the record. */
  readonly facts: GivingFacts;
}

/**
 * Packs given to the person of a visit, open or closed. Never more than there are, and never one past its last day.
 * @returns the lots that they came from
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, VISIT_NOT_FOUND, SHELF_ITEM_NOT_FOUND; SIGNATURE_MISSING, ITEM_STOPPED, CONFLICT for an item
 * that was declined; STOCK_SHORT and INPUT_INVALID with the field
 */
export async function dispenseItem(context: ActionContext, input: DispenseItemInput): Promise<readonly LotStock[]> {
  const { scope, actor } = context;
  requireRight(actor, 'dispenseItem');
  const { visitId, shelfItemId, today, facts } = input;
  const packs = requirePacks(input.packs ?? 1);
  return inTransaction(context, 'dispenseItem', async (trx, log) => {
    await requireVisitToSign(trx, scope, visitId);
    const { item, lots } = await holdItem(trx, scope, shelfItemId);
    if (await findWritten(trx, scope, input)) return [];
    const inAll = (await countGiven(trx, scope, visitId, shelfItemId)) + packs;
    const isCovered = facts.cover === undefined || inAll <= facts.cover.packs;
    const note = requireMayGive(context, item, { ...facts, isCovered }, input.reason);
    const takes = takeLots(item, lots, { lot: input.lot, packs, today });
    const moves = takes.map((take, i) => ({
      ...{ shelfItemId, visitId, note, lot: take.lot, expiry: take.expiry },
      ...{ quantity: -take.quantity, reason: 'dispensed' as const, onDate: today },
      ...(i === 0 && input.id !== undefined ? { id: input.id } : {}),
    }));
    await writeMoves(trx, log, context, moves);
    return takes;
  });
}

/** Packs from the lot in the hand, or first expiring, first out. @throws AppError STOCK_SHORT */
export function takeLots(
  item: ShelfItem,
  lots: readonly LotStock[] | undefined,
  { lot, packs, today }: { readonly lot: Lot | undefined; readonly packs: number; readonly today: string },
): readonly LotStock[] {
  if (!lots) throw new AppError('STOCK_SHORT', `packs: ${item.name} is not counted. Enter what is on the shelf first.`);
  return lot === undefined ? takeFirstExpiring(item, lots, packs, today) : takeFrom(lot, lots, packs, today);
}

/** @returns the reason where one is needed; null for what stands in the plan and waits for nobody */
function requireMayGive(
  { actor }: ActionContext,
  item: ShelfItem,
  facts: GivingFacts & { readonly isCovered: boolean },
  reason: string | undefined,
): string | null {
  if (facts.isTurnedDown) throw new AppError('CONFLICT', `This person has declined ${item.name}.`);
  if (facts.place === 'in-plan') {
    if (facts.isCovered) return null;
    // Beyond the signature the dentist alone gives, in person and with a reason.
    if (!hasRole(actor, 'dentist'))
      throw new AppError('SIGNATURE_MISSING', `packs: ${item.name} goes no further without a new signature: ${facts.cover?.whyNoMore}.`);
    return requireReason(reason);
  }
  if (facts.bars.length > 0)
    throw new AppError(
      'ITEM_STOPPED',
      `${item.name} is not given, because: ${facts.bars.join('; ')}. A dentist may sign against a rule in the plan.`,
    );
  if (facts.place === 'waits' && !hasRole(actor, 'dentist')) throw new AppError('SIGNATURE_MISSING', `${item.name} waits for a signature.`);
  const isProfessional = hasRole(actor, 'dentist') || (hasRole(actor, 'hygienist') && !facts.isForDentist);
  if (!isProfessional) {
    const who = facts.isForDentist ? 'a dentist' : 'a hygienist or a dentist';
    throw new AppError('NOT_ALLOWED', `${item.name} does not stand in the plan of this visit; only ${who} may give it, with a reason.`);
  }
  return requireReason(reason);
}

function takeFirstExpiring(item: ShelfItem, lots: readonly LotStock[], packs: number, today: string): readonly LotStock[] {
  const found = allocate(lots, packs, today);
  if (found.ok) return found.takes;
  const { usable, expired } = countPacks(lots, today);
  const past = expired > 0 ? `; ${expired} more are past their last day` : '';
  throw new AppError('STOCK_SHORT', `packs: ${usable} of ${item.name} in stock, not ${packs}${past}.`);
}

function takeFrom(wanted: Lot, lots: readonly LotStock[], packs: number, today: string): readonly LotStock[] {
  const lot = lots.find((other) => isSameLot(other, wanted));
  const name = wanted.lot ?? 'without a number';
  if (!lot) throw new AppError('STOCK_SHORT', `lot: no packs of lot ${name} are left.`);
  if (isExpired(lot, today)) throw new AppError('STOCK_SHORT', `lot: ${name} is past its last day, ${lot.expiry}.`);
  if (lot.quantity < packs) throw new AppError('STOCK_SHORT', `packs: ${lot.quantity} of lot ${name} left, not ${packs}.`);
  return [{ ...lot, quantity: packs }];
}
