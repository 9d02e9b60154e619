import type { DayTables } from '../../core/plaque/day/dayModel.ts';
import type { AcidDay, EatingEvent } from '../../core/plaque/day/types.ts';
import type { SourceRef } from '../../core/visit/answer.ts';
import { foodsById } from '../foods.ts';
import { oralFluids } from '../oralFluids.ts';
import { plaqueConstants } from './constants.ts';
import { eatingNumbers } from './eating.ts';
import { mouthPresets, plaqueSpread } from './presets.ts';

const plaqueFluid: SourceRef = {
  key: 'vogel2002',
  status: 'proposal',
  note: 'that calcium rises while the pH falls was read (abstract); the amounts are ours',
};

const meal = (id: string, startMinute: number): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'meal',
  startMinute,
  minutes: 20,
  portions: [{ typed: { name: 'meal', unit: 'g', sugarsGPer100: 4, retention: 'clears' }, amount: 400 }],
});

/**
 * Three meals and nothing between them, between the teeth: the day against which the two mineral figures are measured. At an easily reached
 * site plaque fluid hardly falls below saturation on such a day, and nothing could be measured against next to nothing.
 */
const referenceDay: AcidDay = {
  wakeMinute: 420,
  sleepMinute: 1380,
  events: [meal('breakfast', 450), meal('lunch', 750), meal('dinner', 1110)],
};

/** Tables of the acid day, in one edition. */
export const dayTables: DayTables = {
  foods: foodsById,
  constants: plaqueConstants,
  eating: eatingNumbers,
  plaqueSpread,
  // A flow measured once is known to about a quarter; volumes vary between people as in the study of swallowing.
  salivaSpread: {
    restingFlowMlPerMin: [0.75, 1.35],
    sleepFlowMlPerMin: [0.5, 2],
    highestFlowMlPerMin: [0.8, 1.25],
    residualVolumeMl: [0.8, 1.2],
    swallowVolumeMl: [0.9, 1.15],
  },
  fluids: oralFluids,
  plaqueFluid: {
    totals: { calcium: 3, phosphate: 12, fluoride: 0.005, lactate: 25, sodium: 18.6, potassium: 85.1, chloride: 42.8 },
    calciumPerPh: 0.9,
    source: plaqueFluid,
  },
  reference: { day: referenceDay, mouth: mouthPresets.approximal },
};
