import { fluorideContentPpm } from '../../../core/regimen/fluorideContentPpm.ts';
import { fluorideMg, fluorideMmolPerL } from '../../../core/regimen/fluorideMg.ts';
import type { Compound } from '../shelf/shelfDraft.ts';
import type { FieldsOf, Numbers } from './readNumbers.ts';

/** What the strength on a label is of: a compound in percent, or fluoride in ppm. */
export type LabelOf = Compound | 'ppm';
/** Percent by weight goes with grams, by volume with millilitres. */
export type AmountUnit = 'g' | 'mL';

export const strengthFields = (labelOf: LabelOf): FieldsOf<'strength'> => ({
  strength:
    labelOf === 'ppm'
      ? { label: 'Fluoride on the label', unit: 'ppm', low: 0, high: 100_000 }
      : { label: 'Strength of the compound', unit: '%', low: 0, high: 100 },
});

export const amountFields = (unit: AmountUnit): FieldsOf<'use' | 'pack'> => ({
  use: { label: 'One use', unit, low: 0, high: 1000, isAbove: true, hint: 'Empty: mg in one use is not worked out.' },
  pack: { label: 'One pack', unit, low: 0, high: 10_000, isAbove: true, hint: 'Empty: mg in a pack is not worked out.' },
});

export interface FluorideFigures {
  readonly ppm: number;
  readonly mmolPerL: number;
  readonly mgPerUse: number | undefined;
  readonly mgPerPack: number | undefined;
  readonly unit: AmountUnit;
}

export function workOutFluoride(
  { strength, use, pack }: Numbers<'strength', 'use' | 'pack'>,
  labelOf: LabelOf,
  unit: AmountUnit,
): FluorideFigures {
  const ppm = labelOf === 'ppm' ? strength : fluorideContentPpm(labelOf, strength);
  const mgOf = (amount: number | undefined) => (amount === undefined ? undefined : fluorideMg(ppm, amount));
  return { ppm, mmolPerL: fluorideMmolPerL(ppm), mgPerUse: mgOf(use), mgPerPack: mgOf(pack), unit };
}
