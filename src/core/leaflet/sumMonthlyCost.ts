import type { PrintableLine } from './listPrintableLines.ts';

export interface MonthlyCost {
  readonly cents: number;
  /** False when an item has no price, pack size or stated amount: the sum is then a lower bound. */
  readonly complete: boolean;
}

const DAYS_PER_MONTH = 30;

/**
 * What the printed home-care items cost in 30 days, by the share of a pack that is used. Items used at the visit are left out.
 * @returns whole cents; undefined when there is no home-care item or no price is known
 */
export function sumMonthlyCost(lines: readonly PrintableLine[]): MonthlyCost | undefined {
  const home = lines.filter(({ line }) => line.use.atVisit !== true);
  const costs = home.map(centsPerMonth);
  const known = costs.filter((cents) => cents !== undefined);
  if (known.length === 0) return undefined;
  return { cents: Math.round(known.reduce((sum, cents) => sum + cents, 0)), complete: known.length === home.length };
}

function centsPerMonth({ line, item }: PrintableLine): number | undefined {
  const { use } = line;
  const perUse = item.packAmount === undefined ? undefined : amountPerUse(line, item.packAmount.unit);
  if (item.priceCents === undefined || item.packAmount === undefined || perUse === undefined || !(item.packAmount.value > 0))
    return undefined;
  const days = Math.min(use.courseDays ?? DAYS_PER_MONTH, DAYS_PER_MONTH);
  return (perUse * use.timesPerDay * days * item.priceCents) / item.packAmount.value;
}

function amountPerUse({ use }: PrintableLine['line'], unit: 'g' | 'mL' | 'piece'): number | undefined {
  if (unit === 'g') return use.amountG;
  if (unit === 'mL') return use.amountMl;
  const pieces = /^\s*(\d+)\b/.exec(use.amount)?.[1];
  return pieces === undefined ? undefined : Number(pieces);
}
