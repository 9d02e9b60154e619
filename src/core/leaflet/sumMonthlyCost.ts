import { monthlyCostCents } from '../regimen/monthlyCostCents.ts';
import type { PrintableLine } from './listPrintableLines.ts';

export interface MonthlyCost {
  readonly cents: number;
  /** False when the cost of an item is not known: the sum is then a lower bound. */
  readonly complete: boolean;
}

/**
 * What the printed home-care items cost in 30 days, as the plan counts it.
 * @returns whole cents; undefined when no item of home care has a known cost
 */
export function sumMonthlyCost(lines: readonly PrintableLine[]): MonthlyCost | undefined {
  const home = lines.filter(({ line }) => line.use.atVisit !== true);
  const costs = home.map(({ line, item }) => monthlyCostCents([{ item, use: line.use }]));
  const known = costs.filter((cents) => cents !== null);
  if (known.length === 0) return undefined;
  return { cents: known.reduce((sum, cents) => sum + cents, 0), complete: known.length === home.length };
}
