import type { ShelfItem } from '../types.ts';

/**
 * How long one pack lasts at a use. A piece is one use.
 * @returns days, not rounded; undefined while the size or the amount is not known or in units that do not meet, and for what is used at the
 *          visit
 */
export function packDays({ packAmount }: Pick<ShelfItem, 'packAmount'>, use: ShelfItem['use']): number | undefined {
  if (!packAmount || use.atVisit === true) return undefined;
  const perUse = { g: use.amountG, mL: use.amountMl, piece: 1 }[packAmount.unit];
  return perUse === undefined || !(perUse * use.timesPerDay > 0) ? undefined : packAmount.value / (perUse * use.timesPerDay);
}
