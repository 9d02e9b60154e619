/** Fluoride compounds of dental products, by formula. */
export type FluorideCompound = 'NaF' | 'SnF2' | 'Na2PO3F' | 'AgF(NH3)2';

/** Standard atomic masses, g/mol (IUPAC). */
const MASS = { Ag: 107.8682, F: 18.998403, H: 1.008, N: 14.007, Na: 22.989769, O: 15.999, P: 30.973762, Sn: 118.71 } as const;

/** Mass share of fluoride in each compound. */
const FLUORIDE_FRACTION: Readonly<Record<FluorideCompound, number>> = {
  NaF: MASS.F / (MASS.Na + MASS.F),
  SnF2: (2 * MASS.F) / (MASS.Sn + 2 * MASS.F),
  Na2PO3F: MASS.F / (2 * MASS.Na + MASS.P + 3 * MASS.O + MASS.F),
  'AgF(NH3)2': MASS.F / (MASS.Ag + MASS.F + 2 * (MASS.N + 3 * MASS.H)),
};

const PPM_PER_PERCENT = 10_000;

/**
 * Fluoride in a product of known strength, as mass of F per mass of product (w/w), or per volume where the strength is w/v.
 * @param compound  the compound that the percentage is of
 * @param percent   percentage of the compound, 0..100
 * @returns ppm F: mg per kg, or mg per L for a strength in w/v; not rounded
 * @throws RangeError when percent is outside 0..100 (NaN included)
 * @accuracy to the last printed place of the strengths in test/reference/regimen
 * @source atomicMasses
 */
export function fluorideContentPpm(compound: FluorideCompound, percent: number): number {
  if (!(percent >= 0 && percent <= 100)) throw new RangeError(`percent must be 0..100: ${percent}`);
  return percent * PPM_PER_PERCENT * FLUORIDE_FRACTION[compound];
}
