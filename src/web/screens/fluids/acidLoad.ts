import { baseNeededMmolPerKg, titratableMmolPerL } from '../../../core/chemistry/products/titratableLoad.ts';
import type { FieldsOf, Numbers } from './readNumbers.ts';

export type KnownBy = 'titration' | 'composition';

export const MOST_MMOL = 500;
const NEUTRAL_PH = 7;
const ACIDS = ['acetate', 'lactate', 'phosphate', 'carbonate'] as const;
type Acid = (typeof ACIDS)[number];

export const titrationNeeded: FieldsOf<'baseMl'> = {
  baseMl: { label: 'Base used until neutral', unit: 'mL', low: 0, high: 1000 },
};
export const titrationOptional: FieldsOf<'baseMolPerL' | 'sampleMl' | 'pH' | 'portionMl'> = {
  baseMolPerL: { label: 'Strength of the base', unit: 'mol/L', low: 0, high: 10, isAbove: true, hint: 'Empty: 1 mol/L.' },
  sampleMl: { label: 'Drink or rinse that was titrated', unit: 'mL', low: 0, high: 10_000, isAbove: true, hint: 'Empty: 50 mL.' },
  pH: { label: 'Its pH', low: 2, high: 12, hint: 'Empty: not known.' },
  portionMl: { label: 'One portion', unit: 'mL', low: 0, high: 10_000, isAbove: true, hint: 'A glass, a sip, one rinse.' },
};

export const compositionNeeded: FieldsOf<'pH'> = { pH: { label: 'Its pH', low: 2, high: 12 } };
const acid = (label: string) => ({ label, unit: 'mmol/L', low: 0, high: MOST_MMOL });
export const compositionOptional: FieldsOf<Acid | 'portionMl'> = {
  acetate: acid('Acetate'),
  lactate: acid('Lactate'),
  phosphate: acid('Phosphate'),
  carbonate: { ...acid('Carbonate, in all its forms'), hint: 'What stays empty counts as none, and the answer says so.' },
  portionMl: titrationOptional.portionMl,
};

export interface AcidLoad {
  /** Negative where acid is needed to reach neutral. */
  readonly mmolPerL: number;
  readonly mmolPerPortion: number | undefined;
  readonly pH: number | undefined;
  /** Acids that were left empty; undefined for a titration, which counts everything. */
  readonly takenAsNone: readonly string[] | undefined;
}

export function loadByTitration({
  baseMl,
  baseMolPerL,
  sampleMl,
  pH,
  portionMl,
}: Numbers<'baseMl', 'baseMolPerL' | 'sampleMl' | 'pH' | 'portionMl'>): AcidLoad {
  const mmolPerL = titratableMmolPerL({ baseMl, baseMolPerL, sampleMl });
  return { mmolPerL, mmolPerPortion: inPortion(mmolPerL, portionMl), pH, takenAsNone: undefined };
}

/** @throws RangeError as `speciate` */
export function loadByComposition(numbers: Numbers<'pH', Acid | 'portionMl'>): AcidLoad {
  const { pH, portionMl } = numbers;
  const totals = Object.fromEntries(ACIDS.map((name) => [name, numbers[name] ?? 0]));
  const mmolPerL = baseNeededMmolPerKg(totals, [pH, NEUTRAL_PH]);
  const takenAsNone = ACIDS.filter((name) => numbers[name] === undefined);
  return { mmolPerL, mmolPerPortion: inPortion(mmolPerL, portionMl), pH, takenAsNone };
}

const inPortion = (mmolPerL: number, portionMl: number | undefined) =>
  portionMl === undefined ? undefined : (mmolPerL * portionMl) / 1000;
