import type { MeasuredIons } from '../../../core/chemistry/oralFluid.ts';
import { fluorideMmolPerL } from '../../../core/regimen/fluorideMg.ts';
import type { MeasuredSaliva } from '../../../core/visit/describedDays.ts';
import type { FieldsOf, Numbers, Typed } from './readNumbers.ts';

/** mmol/L; what is absent was not measured. */
export interface FluidsMeasured {
  readonly saliva: MeasuredIons;
  readonly plaqueFluid: MeasuredIons;
}

const mmol = (label: string, high: number) => ({ label, unit: 'mmol/L', low: 0.01, high });
const fluoride = (label: string) => ({ label, unit: 'ppm', low: 0.0001, high: 1000 });

export const salivaFields: FieldsOf<'salivaCalcium' | 'salivaPhosphate' | 'salivaFluoride'> = {
  salivaCalcium: mmol('Calcium of saliva', 10),
  salivaPhosphate: mmol('Phosphate of saliva', 40),
  salivaFluoride: fluoride('Fluoride of saliva'),
};

export const plaqueFields: FieldsOf<'plaqueCalcium' | 'plaquePhosphate' | 'plaqueFluoride'> = {
  plaqueCalcium: mmol('Calcium of plaque fluid', 20),
  plaquePhosphate: mmol('Phosphate of plaque fluid', 60),
  plaqueFluoride: fluoride('Fluoride of plaque fluid'),
};

type Field = keyof typeof salivaFields | keyof typeof plaqueFields;

export function measuredOf(numbers: Numbers<never, Field>): FluidsMeasured {
  const ionsOf = (calcium?: number, phosphate?: number, ppm?: number): MeasuredIons => ({
    calcium,
    phosphate,
    fluoride: ppm === undefined ? undefined : fluorideMmolPerL(ppm),
  });
  return {
    saliva: ionsOf(numbers.salivaCalcium, numbers.salivaPhosphate, numbers.salivaFluoride),
    plaqueFluid: ionsOf(numbers.plaqueCalcium, numbers.plaquePhosphate, numbers.plaqueFluoride),
  };
}

/** What the acid day of the visit already holds. */
export const typedOf = (saliva: MeasuredSaliva | undefined): Typed =>
  saliva ? { salivaCalcium: String(saliva.calciumMmolPerL), salivaPhosphate: String(saliva.phosphateMmolPerL) } : {};
