import type { WeightRow } from './tables.ts';

/** Standard normal quantile of 0.05. */
const Z_5TH_PERCENTILE = -1.6448536269514722;
const PER_TENTH_OF_KG = 10;

/**
 * Weight that a planner may assume where nobody weighed the person: the 5th percentile of the lighter sex at the last row at or below the
 * age, so the younger row between rows and the last row above the table, rounded to 0.1 kg. One person in twenty is lighter still: never
 * use it to reassure after something was swallowed.
 * @param ageMonths  completed months, 0 or more
 * @param rows       LMS rows, youngest first
 * @returns kg, or undefined below the first row
 * @throws RangeError when ageMonths is negative or not a number
 * @accuracy within 0.05 kg of the printed 5th percentiles
 * @source cdc2000, who2006
 */
export function plannerWeightKg(ageMonths: number, rows: readonly WeightRow[]): number | undefined {
  if (!(ageMonths >= 0)) throw new RangeError(`ageMonths must be 0 or more: ${ageMonths}`);
  const row = rows.findLast((r) => r.ageMonths <= ageMonths);
  if (!row) return undefined;
  const lighter = Math.min(percentileKg(row.boys, Z_5TH_PERCENTILE), percentileKg(row.girls, Z_5TH_PERCENTILE));
  return Math.round(lighter * PER_TENTH_OF_KG) / PER_TENTH_OF_KG;
}

/**
 * Percentile of an LMS reference, X = M (1 + L S z)^(1/L).
 * @param lms  L (dimensionless, not 0), M (kg), S (dimensionless)
 * @param z    standard normal deviate
 * @returns kg
 * @source cole1992
 */
export function percentileKg({ l, mKg, s }: WeightRow['boys'], z: number): number {
  return mKg * (1 + l * s * z) ** (1 / l);
}
