const MG_PER_G = 1000;
/** g/mol, IUPAC. */
const FLUORINE_MASS = 18.998403;

/**
 * Fluoride in an amount of a product.
 * @param ppm     mg F per kg, or per L for an amount in mL; 0 or more
 * @param amount  g, or mL; 0 or more
 * @returns mg F
 */
export const fluorideMg = (ppm: number, amount: number): number => (ppm * amount) / MG_PER_G;

/**
 * @param ppm  mg F per L
 * @source atomicMasses
 */
export const fluorideMmolPerL = (ppm: number): number => ppm / FLUORINE_MASS;
