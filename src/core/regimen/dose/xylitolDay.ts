export interface XylitolInput {
  readonly ageYears: number;
  /** Measured, kg. */
  readonly weightKg?: number | undefined;
  readonly gramsPerUse?: number | undefined;
  readonly timesPerDay: number;
  /** Xylitol in the whole pack, for the warning about dogs. */
  readonly packGrams?: number | undefined;
}

export interface XylitolDay {
  readonly gramsPerDay: number | null;
  readonly exposures: number;
  readonly gPerKgPerUse: number | null;
  readonly gPerKgPerDay: number | null;
  /** `ask`: weight or amount not known. Adults: what one study bore at once; children: our own lower limit. */
  readonly tolerance: 'within' | 'above' | 'ask';
  /** A dog up to this weight falls ill from the pack; null: amount not known, every dog is at risk. */
  readonly dogIllUpToKg: number | null;
  readonly dogWarning: string;
}

const ADULT_YEARS = 18;
const ADULT_G_PER_KG_AT_ONCE = 0.37;
const DOG_ILL_G_PER_KG = 0.1;
const SAME = 1e-9;

/**
 * Xylitol in a day: how much, how often, and whether it is borne. No weight is assumed: without one the answer is to ask.
 * @param limit  of the child, g per kg, per use and per day (ours)
 * @throws RangeError naming the number outside its range (NaN included)
 * @source oku2007, milgrom2006, ly2006, dogsXylitol
 */
export function xylitolDay(
  { ageYears, weightKg, gramsPerUse, timesPerDay, packGrams }: XylitolInput,
  limit: { readonly perUseGPerKg: number; readonly perDayGPerKg: number },
): XylitolDay {
  for (const [name, value] of Object.entries({ ageYears, weightKg, gramsPerUse, timesPerDay, packGrams })) {
    if (value !== undefined && !(value >= 0 && value <= 1e5)) throw new RangeError(`${name} must be 0..100000: ${value}`);
  }
  const gramsPerDay = gramsPerUse === undefined ? null : gramsPerUse * timesPerDay;
  const perKg = (grams: number | null | undefined) => (grams == null || !weightKg ? null : grams / weightKg);
  const gPerKgPerUse = perKg(gramsPerUse);
  const gPerKgPerDay = perKg(gramsPerDay);
  const isChild = ageYears < ADULT_YEARS;
  const isAbove =
    gPerKgPerUse !== null &&
    gPerKgPerDay !== null &&
    (gPerKgPerUse > (isChild ? limit.perUseGPerKg : ADULT_G_PER_KG_AT_ONCE) + SAME ||
      (isChild && gPerKgPerDay > limit.perDayGPerKg + SAME));
  return {
    gramsPerDay,
    exposures: timesPerDay,
    gPerKgPerUse,
    gPerKgPerDay,
    tolerance: gPerKgPerUse === null ? 'ask' : isAbove ? 'above' : 'within',
    dogIllUpToKg: packGrams === undefined ? null : packGrams / DOG_ILL_G_PER_KG,
    dogWarning: 'Xylitol is dangerous to dogs: keep it where no dog can get it; if one eats any, the vet at once.',
  };
}
