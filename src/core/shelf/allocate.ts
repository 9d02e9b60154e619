import { compareLots, countPacks, isExpired } from './lots.ts';
import type { LotStock } from './types.ts';

export type Allocation =
  | { readonly ok: true; readonly takes: readonly LotStock[] }
  /** `expired`: packs are left, and all of them are past their last day. */
  | { readonly ok: false; readonly reason: 'not-enough' | 'expired'; readonly usable: number; readonly expired: number };

/**
 * Which lots to give packs from: first expiring, first out. Expired lots are passed over, lots without a known expiry come last.
 * @param lots      of one item, in any order
 * @param quantity  whole packs, 1 or more
 * @param today     ISO local date; a lot is good through its last day
 * @returns as many packs as asked for, split over as few lots as the order needs; all of it or nothing
 * @throws RangeError when quantity is no whole number above 0
 */
export function allocate(lots: readonly LotStock[], quantity: number, today: string): Allocation {
  if (!(Number.isInteger(quantity) && quantity > 0)) throw new RangeError(`quantity must be a whole number above 0: ${quantity}`);
  const { usable, expired } = countPacks(
    lots.filter((lot) => lot.quantity > 0),
    today,
  );
  if (usable < quantity) return { ok: false, reason: usable === 0 && expired > 0 ? 'expired' : 'not-enough', usable, expired };
  const takes: LotStock[] = [];
  let left = quantity;
  for (const lot of lots.filter((l) => l.quantity > 0 && !isExpired(l, today)).sort(compareLots)) {
    if (left === 0) break;
    const taken = Math.min(left, lot.quantity);
    takes.push({ ...lot, quantity: taken });
    left -= taken;
  }
  return { ok: true, takes };
}
