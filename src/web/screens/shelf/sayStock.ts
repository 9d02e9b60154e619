import type { MoveView } from '../../../api/stock.ts';
import { countPacks, isExpired } from '../../../core/shelf/lots.ts';
import type { Lot, LotStock } from '../../../core/shelf/types.ts';
import { addDays } from '../../../core/visit/calendar.ts';
import { formatDate, plural } from '../../format.ts';

/** "lot A12, 31 May 2027", with what is not known said. */
export function sayLot({ lot, expiry }: Lot): string {
  return `${lot === null ? 'lot not noted' : `lot ${lot}`}, ${expiry === null ? 'last day not known' : formatDate(expiry)}`;
}

/** How far ahead a last day is called near. */
export const NEAR_DAYS = 60;

/** What to know of the packs beside their number: past, near, and without a date. */
export function sayLotsAside(lots: readonly LotStock[], today: string): readonly string[] {
  const { expired, undated } = countPacks(lots, today);
  const near = lots.filter((lot) => !isExpired(lot, today) && lot.expiry !== null && lot.expiry <= addDays(today, NEAR_DAYS));
  return [
    ...near.map(({ quantity, expiry }) => `${quantity} good until ${formatDate(expiry ?? '')}`),
    ...(undated > 0 ? [`last day of ${undated} not known`] : []),
    ...(expired > 0 ? [`${expired} past the last day`] : []),
  ];
}

export const sayPacks = (count: number): string => plural(count, 'pack');

/** What an entry of the stock book was. */
export function sayMove({ reason, visitId, quantity }: Pick<MoveView, 'reason' | 'visitId' | 'quantity'>): string {
  switch (reason) {
    case 'received':
      return 'came in';
    case 'dispensed':
      return visitId === null ? 'used up in the practice' : 'given at a visit';
    case 'expired':
      return 'thrown away, past the last day';
    case 'returned':
      return 'sent back to the supplier';
    case 'corrected':
      return quantity > 0 ? 'put right, more were there' : 'put right, fewer were there';
  }
}
