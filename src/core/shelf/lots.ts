import type { Lot, LotStock, StockMove } from './types.ts';

/** The last day itself is still good. A lot whose expiry is not known is not called expired, and not called in date either. */
export const isExpired = ({ expiry }: Pick<Lot, 'expiry'>, today: string): boolean => expiry !== null && expiry < today;

/** Lots are told apart by what is printed on them, whatever the case and the spaces of whoever typed it. */
export const lotKey = (lot: string | null): string => (lot ?? '').replaceAll(/\s+/g, ' ').trim().toUpperCase();

export const isSameLot = (a: Lot, b: Lot): boolean => lotKey(a.lot) === lotKey(b.lot) && a.expiry === b.expiry;

/** First to expire first; a lot without a date goes after those with one; then by lot, so that the order is the same every time. */
export function compareLots(a: Lot, b: Lot): number {
  if (a.expiry !== b.expiry) return a.expiry === null ? 1 : b.expiry === null ? -1 : a.expiry < b.expiry ? -1 : 1;
  const [keyA, keyB] = [lotKey(a.lot), lotKey(b.lot)];
  // Named lots before what has no number on it.
  if (keyA === '' || keyB === '') return Number(keyA === '') - Number(keyB === '');
  return keyA < keyB ? -1 : keyA > keyB ? 1 : 0;
}

/**
 * What is left of each lot: the sum of the moves that count.
 * @param moves  of one item, in any order
 * @returns lots with packs left or, after a wrong entry, with fewer than none, first to expire first
 */
export function sumLots(moves: readonly Pick<StockMove, 'lot' | 'expiry' | 'quantity' | 'takenBack'>[]): readonly LotStock[] {
  const lots: LotStock[] = [];
  for (const { lot, expiry, quantity, takenBack } of moves) {
    if (takenBack !== null) continue;
    const at = lots.findIndex((other) => isSameLot(other, { lot, expiry }));
    const before = lots[at];
    if (before) lots[at] = { ...before, quantity: before.quantity + quantity };
    else lots.push({ lot, expiry, quantity });
  }
  return lots.filter(({ quantity }) => quantity !== 0).sort(compareLots);
}

export interface PacksLeft {
  /** May be given today; those without a known expiry are among them. */
  readonly usable: number;
  readonly expired: number;
  /** Of the usable ones, those whose expiry is not known. */
  readonly undated: number;
}

export function countPacks(lots: readonly LotStock[], today: string): PacksLeft {
  const sum = (of: (lot: LotStock) => boolean) => lots.filter(of).reduce((total, { quantity }) => total + quantity, 0);
  return {
    usable: sum((lot) => !isExpired(lot, today)),
    expired: sum((lot) => isExpired(lot, today)),
    undated: sum(({ expiry }) => expiry === null),
  };
}
