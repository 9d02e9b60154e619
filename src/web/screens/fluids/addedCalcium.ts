import { constants37 } from '../../../core/chemistry/constants37.ts';
import { type SaturationWithAdded, saturationWithAdded } from '../../../core/chemistry/products/saturationWithAdded.ts';
import { fluorideMmolPerL } from '../../../core/regimen/fluorideMg.ts';
import { MOST_MMOL } from './acidLoad.ts';
import type { FieldsOf, NumberField, Numbers } from './readNumbers.ts';

const mmol = (label: string, hint?: string): NumberField => ({ label, unit: 'mmol/L', low: 0, high: MOST_MMOL, ...(hint && { hint }) });
const ppm = (label: string, hint?: string): NumberField => ({ label, unit: 'ppm', low: 0, high: 9000, ...(hint && { hint }) });

export const liquidFields: FieldsOf<'pH' | 'calcium' | 'phosphate'> = {
  pH: { label: 'Its pH, ready to use', low: 2, high: 12 },
  calcium: mmol('Calcium in it', '40 mg in a litre are 1 mmol/L. 0 where there is none.'),
  phosphate: mmol('Phosphate in it', '31 mg of phosphorus in a litre are 1 mmol/L. 0 where there is none.'),
};

const BACKGROUND = ['sodium', 'potassium', 'chloride', 'carbonate', 'lactate', 'acetate'] as const;
type Background = (typeof BACKGROUND)[number];

export const addedFields: FieldsOf<'addedCalcium' | 'addedPhosphate' | 'fluoridePpm' | 'addedFluoridePpm'> = {
  addedCalcium: mmol('Calcium added'),
  addedPhosphate: mmol('Phosphate added'),
  fluoridePpm: ppm('Fluoride in it', 'Empty: not known, and nothing is said of minerals with fluoride.'),
  addedFluoridePpm: ppm('Fluoride added'),
};

export const backgroundFields: FieldsOf<Background> = {
  sodium: mmol('Sodium'),
  potassium: mmol('Potassium'),
  chloride: mmol('Chloride'),
  carbonate: mmol('Carbonate, in all its forms'),
  lactate: mmol('Lactate'),
  acetate: mmol('Acetate'),
};

type Optional = 'addedCalcium' | 'addedPhosphate' | 'fluoridePpm' | 'addedFluoridePpm' | Background;

export interface AddedFigures extends SaturationWithAdded {
  readonly isAnythingAdded: boolean;
  /** False: nothing is said of fluorapatite and calcium fluoride. */
  readonly isFluorideKnown: boolean;
  /** Salts that were left empty. */
  readonly takenAsNone: readonly string[];
}

/** @throws RangeError as `saturationWithAdded` */
export function workOutAdded(numbers: Numbers<'pH' | 'calcium' | 'phosphate', Optional>): AddedFigures {
  const { pH, calcium, phosphate, addedCalcium = 0, addedPhosphate = 0, fluoridePpm, addedFluoridePpm = 0 } = numbers;
  const background = Object.fromEntries(BACKGROUND.map((ion) => [ion, numbers[ion] ?? 0]));
  const isFluorideKnown = fluoridePpm !== undefined;
  if (!isFluorideKnown && addedFluoridePpm > 0)
    throw new RangeError('fluoridePpm must be given where fluoride is added; 0 where there is none');
  const added = {
    calcium: addedCalcium,
    phosphate: addedPhosphate,
    fluoride: fluorideMmolPerL(addedFluoridePpm),
  };
  return {
    ...saturationWithAdded({ ...background, calcium, phosphate, fluoride: fluorideMmolPerL(fluoridePpm ?? 0) }, added, pH),
    isAnythingAdded: addedCalcium + addedPhosphate + addedFluoridePpm > 0,
    isFluorideKnown,
    takenAsNone: BACKGROUND.filter((ion) => numbers[ion] === undefined),
  };
}

/** pK of enamel as sources give it (`shellis1993` and others): between them the answer depends on which of them is right. */
const ENAMEL_PK = { low: 57.7, high: 58.8 } as const;

/** What becomes of enamel in it, by the composition that was given. */
export function sayEnamel(index: number | null): string {
  if (index === null) return 'enamel dissolves in it, for it holds no calcium or no phosphate';
  const indexAt = (pK: number) => index + pK + constants37.solids.enamel.logKsp;
  if (indexAt(ENAMEL_PK.high) < 0) return 'enamel can dissolve in it';
  if (indexAt(ENAMEL_PK.low) >= 0) return 'enamel does not dissolve in it';
  return 'it is too close to call whether enamel dissolves in it';
}
