import type { SourceRef } from '../visit/answer.ts';

/** What a fluid is made of, in the order of the columns of a batch. */
export const COMPONENTS = [
  'calcium',
  'phosphate',
  'fluoride',
  'carbonate',
  'lactate',
  'acetate',
  'magnesium',
  'sodium',
  'potassium',
  'chloride',
] as const;
export type Component = (typeof COMPONENTS)[number];

/** Total (analytical) amounts, mmol per kg of water; 0 where absent. For dilute fluids mmol/L is the same to 1 %. */
export type Totals = Readonly<Partial<Record<Component, number | undefined>>>;

export const MINERALS = [
  'hydroxyapatite',
  'fluorapatite',
  'enamel',
  'brushite',
  'octacalciumPhosphate',
  'tricalciumPhosphate',
  'fluorite',
  'calcite',
] as const;
export type Mineral = (typeof MINERALS)[number];

/** A dissolved species, written from free components, protons and water. */
export interface Species {
  readonly charge: number;
  /** How many of each component one unit holds. */
  readonly of: Readonly<Partial<Record<Component, number>>>;
  /** Protons taken up; negative where they are given off. */
  readonly protons: number;
  /** Water taken up; negative where it is given off. */
  readonly water: number;
  /** log10 of the constant of formation, 37 °C, ionic strength 0, mol/kg. */
  readonly logK: number;
  readonly source: SourceRef;
}

export type SpeciesName =
  | 'OH-'
  | 'HPO4-2'
  | 'H2PO4-'
  | 'H3PO4'
  | 'HCO3-'
  | 'CO2'
  | 'HF'
  | 'HF2-'
  | 'HLac'
  | 'HAce'
  | 'CaOH+'
  | 'CaPO4-'
  | 'CaHPO4'
  | 'CaH2PO4+'
  | 'CaCO3'
  | 'CaHCO3+'
  | 'CaF+'
  | 'CaLac+'
  | 'CaAce+'
  | 'MgHPO4'
  | 'NaHPO4-'
  | 'KHPO4-';

export interface Solid {
  /** Ions in the formula that the index is of; the degree of saturation is the root of that order. */
  readonly ions: number;
  readonly of: Readonly<Partial<Record<'calcium' | 'phosphate' | 'fluoride' | 'carbonate', number>>>;
  readonly hydroxide: number;
  readonly protons: number;
  readonly water: number;
  /** log10 of the solubility product, 37 °C. */
  readonly logKsp: number;
  readonly source: SourceRef;
}

/** One set of constants; a result can be computed again with the set that made it. */
export interface ChemistryConstants {
  /** (kg/mol)^0.5 */
  readonly debyeHuckelA: number;
  /** Fall of the activity of water for each mol/kg dissolved. */
  readonly waterPerMolal: number;
  readonly species: Readonly<Record<SpeciesName, Species>>;
  readonly solids: Readonly<Record<Mineral, Solid>>;
}

export interface ChemistryOptions {
  /** `calcium` (default): the pairs of calcium only. `with-background`: pairs of magnesium, sodium and potassium with phosphate as well. */
  readonly pairs?: 'calcium' | 'with-background' | undefined;
  readonly constants?: ChemistryConstants | undefined;
}

/** Below and above this the constants were not checked. */
export const PH_RANGE = { from: 2, to: 12 } as const;
/** mmol/kg; a typing error is far above what any oral fluid, drink or rinse holds. */
export const MAX_TOTAL_MMOL_PER_KG = 1_000;
/** mol/kg: the activity equation is not valid above. */
export const MAX_IONIC_STRENGTH = 0.5;
/** mol/kg: above this a result is marked. */
export const GOOD_IONIC_STRENGTH = 0.3;
