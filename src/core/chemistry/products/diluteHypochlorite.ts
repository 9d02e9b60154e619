/** g/mol: chlorine gas, sodium hypochlorite. */
const CHLORINE = 70.906;
const HYPOCHLORITE = 74.442;
/** One mole of hypochlorite frees one mole of chlorine: % of NaOCl to % of available chlorine. */
export const CHLORINE_PER_HYPOCHLORITE = CHLORINE / HYPOCHLORITE;
const PPM_PER_PERCENT = 10_000;

/** What a percentage on a label is of. Some public sheets take the two for the same, which is 5 % off. */
export type HypochloriteConvention = 'sodium-hypochlorite' | 'available-chlorine';

export interface HypochloriteDilution {
  readonly stockPercent: number;
  /** What `stockPercent` is of; the target is always of sodium hypochlorite. */
  readonly stockIs: HypochloriteConvention;
  /** % sodium hypochlorite. */
  readonly targetPercent: number;
  readonly volumeMl: number;
  /** % sodium hypochlorite, the most that is allowed in the mouth. */
  readonly highestPercent: number;
  /** Where the label is by weight: 1.08 to 1.10 at 6 to 8.25 %. Absent: a label by volume. */
  readonly stockDensityGPerMl?: number | undefined;
}

export interface HypochloriteRecipe {
  readonly stockMl: number;
  readonly waterMl: number;
  /** Of the stock, % sodium hypochlorite in weight by volume. */
  readonly stockHypochloritePercent: number;
  /** Of what comes out, mg/L. */
  readonly availableChlorinePpm: number;
  /** In one line: what the percentages are of. */
  readonly convention: string;
}

/**
 * How much household stock makes a weak rinse, and its available chlorine.
 * @param dilution.stockPercent        0..20
 * @param dilution.targetPercent       above 0, at most `highestPercent`, below the stock
 * @param dilution.volumeMl            above 0, up to 5000
 * @param dilution.stockDensityGPerMl  1..1.3
 * @throws RangeError naming the field; a target above `highestPercent` is refused, never lowered
 * @source atomicMasses; hypochloriteTrials
 */
export function diluteHypochlorite(dilution: HypochloriteDilution): HypochloriteRecipe {
  const { stockPercent, stockIs, targetPercent, volumeMl, highestPercent, stockDensityGPerMl = 1 } = dilution;
  requireWithin('stockPercent', stockPercent, 20);
  requireWithin('volumeMl', volumeMl, 5000);
  if (!(stockDensityGPerMl >= 1 && stockDensityGPerMl <= 1.3)) {
    throw new RangeError(`stockDensityGPerMl must be 1..1.3: ${stockDensityGPerMl}`);
  }
  if (!(targetPercent > 0 && targetPercent <= highestPercent)) {
    throw new RangeError(`targetPercent must be above 0 and at most ${highestPercent} % sodium hypochlorite: ${targetPercent}`);
  }
  const asHypochlorite = stockIs === 'available-chlorine' ? stockPercent / CHLORINE_PER_HYPOCHLORITE : stockPercent;
  const stockHypochloritePercent = asHypochlorite * stockDensityGPerMl;
  if (!(stockHypochloritePercent >= targetPercent)) {
    throw new RangeError(`stockPercent must be at least as strong as the target of ${targetPercent} %: ${stockPercent}`);
  }
  const stockMl = (targetPercent * volumeMl) / stockHypochloritePercent;
  return {
    stockMl,
    waterMl: volumeMl - stockMl,
    stockHypochloritePercent,
    availableChlorinePpm: targetPercent * PPM_PER_PERCENT * CHLORINE_PER_HYPOCHLORITE,
    convention: `The target is % sodium hypochlorite by volume; the stock's label is read as % ${stockIs === 'available-chlorine' ? 'available chlorine' : 'sodium hypochlorite'} ${stockDensityGPerMl === 1 ? 'by volume' : 'by weight'}.`,
  };
}

function requireWithin(name: string, value: number, high: number): void {
  if (!(value > 0 && value <= high)) throw new RangeError(`${name} must be above 0 and at most ${high}: ${value}`);
}
