const UL_PER_KG = 2.5;
const UL_PER_DROP = 25;
const SAME = 1e-9;

/** Most silver diamine fluoride 38 % at one visit. */
export interface SilverLimit {
  /** null: weight not known, or no whole drop. */
  readonly drops: number | null;
  readonly atMostMicrolitres: number | null;
  readonly says: string;
}

/**
 * Most silver diamine fluoride at one visit: 25 uL for each 10 kg, counted as volume, since a measured drop is a third larger than its name.
 * @param weightKg  measured, above 0; undefined = not weighed, and no weight is assumed
 * @throws RangeError when the weight is not above 0
 * @source horst2016, crystal2019
 */
export function silverDrops(weightKg: number | undefined): SilverLimit {
  if (weightKg === undefined)
    return { drops: null, atMostMicrolitres: null, says: 'Weight not known: no whole drop; the dentist measures the volume.' };
  if (!(weightKg > 0 && weightKg <= 1_000)) throw new RangeError(`weightKg must be above 0: ${weightKg}`);
  const atMostMicrolitres = weightKg * UL_PER_KG;
  const drops = Math.floor(atMostMicrolitres / UL_PER_DROP + SAME);
  if (drops === 0) {
    return {
      drops: null,
      atMostMicrolitres,
      says: `Under 10 kg no whole drop: at most ${Math.floor(atMostMicrolitres)} µL, measured by the dentist.`,
    };
  }
  const volume = `${Math.floor(atMostMicrolitres)} µL`;
  return {
    drops,
    atMostMicrolitres,
    says: `At most ${volume} a visit, at most weekly: ${drops} nominal ${drops === 1 ? 'drop' : 'drops'} of 25 µL; real drops are larger.`,
  };
}
