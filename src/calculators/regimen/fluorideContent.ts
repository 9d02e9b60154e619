import { z } from 'zod';
import { fluorideContentPpm } from '../../core/regimen/fluorideContentPpm.ts';
import { fluorideMg, fluorideMmolPerL } from '../../core/regimen/fluorideMg.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';
import { compound, percent } from './regimenFields.ts';

const amount = z.number().min(0).max(1e6).optional();
const input = z
  .strictObject({
    compound,
    percent,
    amountG: amount.describe('one use, for a percentage by weight'),
    amountMl: amount.describe('one use, for a percentage by volume'),
  })
  .refine((p) => p.amountG === undefined || p.amountMl === undefined, { error: 'give amountG or amountMl, not both', path: ['amountMl'] });
const output = z.strictObject({
  fluoridePpm: z.number().describe('mg F per kg, or per L for a percentage by volume; not rounded'),
  fluorideMmolPerL: z.number().describe('taking the percentage as by volume'),
  fluorideMgPerUse: nullableNumber.describe('null without an amount'),
});

export const fluorideContent: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'fluoride-content',
  summary: 'Fluoride of a product from its compound and percentage: ppm, mmol/L, and mg in one use',
  input,
  output,
  run(given) {
    const fluoridePpm = fluorideContentPpm(given.compound, given.percent);
    const used = given.amountG ?? given.amountMl;
    return {
      fluoridePpm,
      fluorideMmolPerL: fluorideMmolPerL(fluoridePpm),
      fluorideMgPerUse: used === undefined ? null : fluorideMg(fluoridePpm, used),
    };
  },
};
