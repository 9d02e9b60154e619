import { fluorideContentPpm } from '../regimen/fluorideContentPpm.ts';
import { fluorideMg } from '../regimen/fluorideMg.ts';
import type { LabelStrength, ShelfItem } from '../regimen/types.ts';

const PPM_PER_PERCENT = 10_000;

/**
 * Fluoride in a product by its label.
 * @param label     percent 0..100, or ppm
 * @param compound  what a percentage of the compound is of
 * @returns ppm F: mg per kg, or mg per L for a strength in w/v; undefined where the compound is not known
 * @throws RangeError when a percentage is outside 0..100 (NaN included)
 */
export function labelPpm({ value, of }: LabelStrength, compound: ShelfItem['compound']): number | undefined {
  if (of === 'ppm') return value;
  if (!(value >= 0 && value <= 100)) throw new RangeError(`percent must be 0..100: ${value}`);
  if (of === 'ion') return value * PPM_PER_PERCENT;
  return compound === undefined ? undefined : fluorideContentPpm(compound, value);
}

export interface LabelledAmount {
  readonly value: number;
  readonly unit: 'g' | 'mL';
}

export interface FluorideInAmount {
  readonly mg: number;
  /** The label counts by weight and the amount by volume, or it does not say: true to the milligram only where 1 mL weighs 1 g. */
  readonly isByWater: boolean;
}

/**
 * Fluoride in an amount of a labelled product.
 * @param ppm  as `labelPpm` gives it
 * @param per  what the label counts by; undefined = it does not say
 * @returns mg F
 */
export function fluorideInAmount(ppm: number, { value, unit }: LabelledAmount, per: LabelStrength['per']): FluorideInAmount {
  return { mg: fluorideMg(ppm, value), isByWater: unit === 'mL' ? per !== 'w/v' : per === 'w/v' };
}
