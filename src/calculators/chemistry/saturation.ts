import { z } from 'zod';
import { saturation as computeSaturation } from '../../core/chemistry/saturation.ts';
import { MINERALS, type Mineral } from '../../core/chemistry/types.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { pairs, pH, totalsMmolPerKg } from './chemistryFields.ts';

const input = z.strictObject({ pH, totalsMmolPerKg, pairs });

const perMineral = z.strictObject(
  Object.fromEntries(MINERALS.map((mineral) => [mineral, nullableNumber])) as Record<Mineral, typeof nullableNumber>,
);
const output = z.strictObject({
  ionicStrength: z.number().describe('mol per kg of water'),
  isStrong: z.boolean().describe('above 0.3 mol/kg, where activities are less sure'),
  waterActivity: z.number(),
  saturationIndex: perMineral.describe(
    'log10(ion activity product / solubility product), apatites on the formula with 5 calcium; null where an ion is absent',
  ),
  degreeOfSaturation: perMineral.describe('10^(index / number of ions): below 1 the mineral dissolves'),
  logActivity: z
    .strictObject({ calcium: nullableNumber, phosphate: nullableNumber, fluoride: nullableNumber, hydroxide: z.number() })
    .describe('log10 of the activity of the free ion'),
  chargeImbalanceMmolPerKg: z.number().describe('cations less anions; nothing is added to make the fluid neutral'),
});

export const saturation: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'saturation',
  summary: 'How far a fluid, drink or rinse is saturated with enamel, apatites and other minerals, at 37 °C',
  input,
  output,
  run({ pH: at, totalsMmolPerKg: totals, pairs: set }) {
    const { ionicStrength, isStrong, waterActivity, saturationIndex, degreeOfSaturation, logActivity, chargeImbalanceMmolPerKg } =
      computeSaturation(totals, at, { pairs: set });
    const { calcium, phosphate, fluoride, hydroxide } = logActivity;
    return {
      ionicStrength,
      isStrong,
      waterActivity,
      saturationIndex: { ...saturationIndex },
      degreeOfSaturation: { ...degreeOfSaturation },
      logActivity: { calcium, phosphate, fluoride, hydroxide },
      chargeImbalanceMmolPerKg,
    };
  },
};
