import type { Level } from '../../risk/types.ts';
import type { Jurisdiction } from '../types.ts';

export interface SupplementInput {
  /** Completed months. */
  readonly ageMonths: number;
  readonly waterFluorideMgPerL?: number | undefined;
  readonly level?: Level | undefined;
  readonly jurisdiction: Jurisdiction;
}

/** What the table of 2010 says; never proposed by the program. */
export interface SupplementDose {
  /** null: nothing may be given, or a fact is missing. */
  readonly mgPerDay: number | null;
  readonly because: string;
}

interface Row {
  readonly fromMonths: number;
  readonly belowMonths: number;
  readonly below03: number;
  readonly from03to06: number;
}
/** Lower age included, upper not; water of exactly 0.3 and 0.6 mg/L belongs to the middle column; above it nothing. */
const ROWS: readonly Row[] = [
  { fromMonths: 6, belowMonths: 36, below03: 0.25, from03to06: 0 },
  { fromMonths: 36, belowMonths: 72, below03: 0.5, from03to06: 0.25 },
  { fromMonths: 72, belowMonths: 192, below03: 1, from03to06: 0.5 },
];
const LOW_WATER = 0.3;
const HIGH_WATER = 0.6;
const THREE_YEARS = 36;

/**
 * Fluoride drops or tablets by age and water, for a physician or dentist who decides on them: off by default everywhere. Missing facts
 * give no dose. In the US, and where the place is not known, nothing under 3 years since 31 October 2025.
 * @throws RangeError when the age or the water's fluoride is negative or not a number
 * @source ada2010supplements, fda2025supplements
 */
export function supplementSchedule({ ageMonths, waterFluorideMgPerL: water, level, jurisdiction }: SupplementInput): SupplementDose {
  if (!(ageMonths >= 0)) throw new RangeError(`ageMonths must be 0 or more: ${ageMonths}`);
  if (water !== undefined && !(water >= 0)) throw new RangeError(`waterFluorideMgPerL must be 0 or more: ${water}`);
  const none = (because: string): SupplementDose => ({ mgPerDay: null, because });
  const row = ROWS.find((r) => ageMonths >= r.fromMonths && ageMonths < r.belowMonths);
  if (!row) return none('the table is from 6 months to under 16 years');
  if (jurisdiction !== 'UK' && jurisdiction !== 'EU' && ageMonths < THREE_YEARS) return none('not under 3 years, since 31 October 2025');
  if (level === undefined) return none('ask first: the level is not confirmed, and it is for high risk only');
  if (level !== 'high' && level !== 'extreme') return none('for high risk only');
  if (water === undefined) return none("ask first: the water's fluoride is not known; have it tested");
  if (water > HIGH_WATER) return none('the water holds enough');
  const mgPerDay = water < LOW_WATER ? row.below03 : row.from03to06;
  return mgPerDay === 0
    ? none('the table gives nothing at this age and water')
    : { mgPerDay, because: 'by age and water; a physician or dentist decides' };
}
