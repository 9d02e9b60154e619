import { percentileKg, plannerWeightKg } from '../plannerWeightKg.ts';
import type { WeightRow } from '../tables.ts';
import type { PersonFacts } from '../types.ts';

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
  const row = rows.findLast((r) => r.ageMonths <= ageMonths) ?? rows[0];
  if (!row) return undefined;
  const most = Math.max(percentileKg(row.boys, 0), percentileKg(row.girls, 0)) * MOST_SHARE;
  if (weightKg >= leastFittingKg(ageMonths, rows) && weightKg <= most) return undefined;
  const age = ageMonths < 24 ? `${ageMonths} months` : `${Math.floor(ageMonths / 12)} years`;
  return `${weightKg} kg does not fit ${age}: weigh again, or correct the age.`;
}

/**
 * The least weight that is not asked back at an age, kg. Nothing that would be an emergency at it may be passed without a weight.
 * @source cdc2000, who2006
 */
export function leastFittingKg(ageMonths: number, rows: readonly WeightRow[]): number {
  const light = plannerWeightKg(ageMonths, rows);
  return light === undefined ? LEAST_AT_BIRTH_KG : light * LEAST_SHARE;
}

/** What is in doubt about the weight of a person; undefined where it fits, or where nobody weighed. */
export function weightDoubtOf({ weightKg, ageMonths }: Pick<PersonFacts, 'weightKg' | 'ageMonths'>, rows: readonly WeightRow[]) {
  return weightKg === undefined ? undefined : weightDoubt(weightKg, ageMonths, rows);
}

/** The facts without a weight that is in doubt: to every rule it is not known. */
export function withoutDoubtfulWeight(facts: PersonFacts, rows: readonly WeightRow[]): PersonFacts {
  if (weightDoubtOf(facts, rows) === undefined) return facts;
  const { weightKg: _, ...others } = facts;
  return others;
}
