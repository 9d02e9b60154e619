import { speciate } from '../speciate.ts';
import type { ChemistryOptions, Totals } from '../types.ts';

export interface Titration {
  /** Base used up to neutral, mL, 0..1000. */
  readonly baseMl: number;
  /** mol/L, default 1. */
  readonly baseMolPerL?: number | undefined;
  /** What was titrated, mL, default 50. */
  readonly sampleMl?: number | undefined;
}

/**
 * Acid that a drink or rinse brings along, from a titration as drinks are usually measured: mL of 1 M base to bring 50 mL to neutral.
 * @returns mmol/L
 * @throws RangeError naming the field
 * @source drinkGroups
 */
export function titratableMmolPerL({ baseMl, baseMolPerL = 1, sampleMl = 50 }: Titration): number {
  if (!(baseMl >= 0 && baseMl <= 1000)) throw new RangeError(`baseMl must be 0..1000: ${baseMl}`);
  if (!(baseMolPerL > 0 && baseMolPerL <= 10)) throw new RangeError(`baseMolPerL must be above 0 and at most 10: ${baseMolPerL}`);
  if (!(sampleMl > 0 && sampleMl <= 10_000)) throw new RangeError(`sampleMl must be above 0 and at most 10000: ${sampleMl}`);
  return (baseMl * baseMolPerL * 1000) / sampleMl;
}

/**
 * Strong base that brings a fluid of known composition from one pH to another: the change of the charge of everything in it. Negative where
 * acid is needed. Acids that are not in the composition, citric acid above all, are not in the result.
 * @param from  pH of the fluid, 2..12
 * @param to    2..12
 * @returns mmol per kg of water
 * @throws RangeError as `speciate`
 * @source phreeqc3
 */
export function baseNeededMmolPerKg(
  totals: Totals,
  [from, to]: readonly [from: number, to: number],
  options: ChemistryOptions = {},
): number {
  return speciate(totals, from, options).chargeImbalanceMmolPerKg - speciate(totals, to, options).chargeImbalanceMmolPerKg;
}
