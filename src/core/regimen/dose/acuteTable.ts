import { fluorideMg } from '../fluorideMg.ts';
import type { FluorideTables } from '../tables.ts';
import { weightDoubtOf } from './weightDoubt.ts';

/** A product in the house. What its pack does not tell stays undefined. */
export interface HouseProduct {
  readonly name: string;
  /** mg F per kg, or per L where the unit is mL. */
  readonly ppm?: number | undefined;
  readonly unit: 'g' | 'mL';
  readonly packAmount?: number | undefined;
}

export interface HouseChild {
  readonly ageMonths: number;
  /** Measured, kg. Without one there is no table: no weight is assumed here. */
  readonly weightKg?: number | undefined;
}

export interface AcuteRow {
  readonly product: string;
  readonly unit: 'g' | 'mL';
  /** From this much on it is an emergency, rounded down to 0.1; null where the strength is not known. Less is not harmless. */
  readonly fromAmount: number | null;
  /** The whole pack reaches it; null where not known. */
  readonly packReachesIt: boolean | null;
}

export interface AcuteTable {
  readonly weightKg: number | null;
  /** What has to be asked before there are rows; null where the weight is known and fits the age. */
  readonly ask: string | null;
  readonly emergencyMg: number | null;
  readonly rows: readonly AcuteRow[];
  /** The same whatever was swallowed, and for every child. */
  readonly sentence: string;
}

/** Hides the noise of binary fractions, far below a tenth. */
const SAME = 1e-9;
const TENTHS = 10;

/**
 * How much of each product in the house brings a child to the dose of an emergency. For the professional who tells a family what to lock
 * away: an amount below it is never called harmless, and the sentence stands with every table.
 * @param child     completed months, 0 or more, and the measured weight, above 0
 * @param products  ppm 0 or more; without one the row has no amount
 * @throws RangeError naming the number outside its range (NaN included)
 * @accuracy rounded down to 0.1 g or mL
 * @source whitford1987, cdc2000, who2006
 */
export function acuteTable(child: HouseChild, products: readonly HouseProduct[], tables: FluorideTables): AcuteTable {
  const { weightKg } = child;
  if (weightKg !== undefined && !(weightKg > 0 && weightKg <= 1_000)) throw new RangeError(`weightKg must be above 0: ${weightKg}`);
  const sentence = saySwallowed(tables.emergencyMgPerKg);
  const ask = weightKg === undefined ? ASK_WEIGHT : (weightDoubtOf(child, tables.weights) ?? null);
  if (weightKg === undefined || ask !== null) return { weightKg: null, ask, emergencyMg: null, rows: [], sentence };
  const emergencyMg = weightKg * tables.emergencyMgPerKg;
  return { weightKg, ask, emergencyMg, rows: products.map((product) => rowOf(product, emergencyMg)), sentence };
}

const ASK_WEIGHT = 'Ask for the weight: without it no amount is given.';

/** What to do when more than one use is swallowed. */
export const saySwallowed = (emergencyMgPerKg: number): string =>
  `More swallowed than one brushing or rinse: poison centre now, with the pack in hand. From ${emergencyMgPerKg} mg fluoride per kg: emergency care now. Never make anyone vomit, and do not wait for signs.`;

function rowOf({ name, ppm, unit, packAmount }: HouseProduct, emergencyMg: number): AcuteRow {
  if (ppm !== undefined && !(ppm >= 0 && ppm <= 1e6)) throw new RangeError(`ppm of ${name} must be 0..1000000: ${ppm}`);
  const amount = ppm === undefined || ppm === 0 ? null : emergencyMg / fluorideMg(ppm, 1);
  const fromAmount = amount === null ? null : Math.floor(amount * TENTHS + SAME) / TENTHS;
  const packReachesIt = amount === null || packAmount === undefined ? null : packAmount >= amount * (1 - SAME);
  return { product: name, unit, fromAmount, packReachesIt: ppm === 0 ? false : packReachesIt };
}
