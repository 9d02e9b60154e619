import { percentileKg, plannerWeightKg } from '../plannerWeightKg.ts';
import type { WeightRow } from '../tables.ts';

/** Of the light weight for the age, and of the median: outside it was more likely mistyped than weighed. Ours. */
const LEAST_SHARE = 0.55;
const MOST_SHARE = 5;
const LEAST_AT_BIRTH_KG = 0.4;

/**
 * Whether a weight fits an age at all. A weight that does not is asked back; nothing is computed with it.
 * @param weightKg   as typed
 * @param ageMonths  completed months, 0 or more
 * @returns a sentence that asks, or undefined where it fits
 * @source cdc2000, who2006
 */
export function weightDoubt(weightKg: number, ageMonths: number, rows: readonly WeightRow[]): string | undefined {
  const [first] = rows;
  if (!first) return undefined;
  const light = plannerWeightKg(ageMonths, rows);
  const row = rows.findLast((r) => r.ageMonths <= ageMonths) ?? first;
  const least = light === undefined ? LEAST_AT_BIRTH_KG : light * LEAST_SHARE;
  const most = Math.max(percentileKg(row.boys, 0), percentileKg(row.girls, 0)) * MOST_SHARE;
  if (weightKg >= least && weightKg <= most) return undefined;
  const age = ageMonths < 24 ? `${ageMonths} months` : `${Math.floor(ageMonths / 12)} years`;
  return `${weightKg} kg does not fit ${age}: weigh again, or correct the age.`;
}
