/**
 * Where each quantity stands in the array of a state: blocks of one value per layer of plaque, tooth first, then the film of saliva. All
 * in mmol/L but the pH.
 */
export const SUGAR = 0;
export const LACTATE = 1;
export const ACETATE = 2;
export const PHOSPHATE = 3;
export const CARBONATE = 4;
export const UREA = 5;
export const AMMONIA = 6;
/** Solutes are the blocks before this one. Protons that can be given off, counted from lactate, acetate, HPO4, HCO3, NH4. */
export const PROTONS = 7;
export const PH = 8;
/** Sugar stored in plaque; the place of the film is unused. */
export const STORE = 9;
const BLOCKS = 10;

/** Places behind the blocks: the saliva in the mouth, as what it holds more than fresh saliva of the same flow (sugar: what it holds). */
export const MOUTH_SUGAR = 0;
export const MOUTH_ACETATE = 1;
export const MOUTH_PHOSPHATE = 2;
export const MOUTH_CARBONATE = 3;
export const MOUTH_UREA = 4;
export const MOUTH_PROTONS = 5;
/** Sums for the proton balance, mmol/L x m: made in plaque, brought by saliva, and both without regard to sign. */
export const MADE = 6;
export const BROUGHT = 7;
export const TURNOVER = 8;
const TAIL = 9;

/** Where the places behind the blocks begin. */
export const tailAt = (cells: number): number => BLOCKS * (cells + 1);
export const stateLength = (cells: number): number => tailAt(cells) + TAIL;
