import type { ShelfItem } from './types.ts';

const DAYS = 30;

/**
 * What home care costs in 30 days, by the share of each pack that is used up; a course counts only its days. What is done at the visit is
 * not home care. A piece is one use.
 * @returns integer cents, each item rounded up; null when a price, a pack size or an amount is not known
 */
export function monthlyCostCents(uses: readonly { readonly item: ShelfItem; readonly use: ShelfItem['use'] }[]): number | null {
  const costs = uses.filter(({ use }) => use.atVisit !== true).map(costCents);
  return costs.includes(undefined) ? null : costs.reduce<number>((sum, cents) => sum + (cents ?? 0), 0);
}

function costCents({
  item: { packAmount, priceCents },
  use,
}: {
  readonly item: ShelfItem;
  readonly use: ShelfItem['use'];
}): number | undefined {
  if (!packAmount || priceCents === undefined) return undefined;
  const amount = { g: use.amountG, mL: use.amountMl, piece: 1 }[packAmount.unit];
  if (amount === undefined) return undefined;
  const days = Math.min(DAYS, use.courseDays ?? DAYS);
  return Math.ceil((priceCents * amount * use.timesPerDay * days) / packAmount.value);
}
