import { z } from 'zod';
import { fleissKappa } from '../../core/stats/agreement/fleissKappa.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';

const input = z.strictObject({
  counts: z
    .array(z.array(z.int().nonnegative()).min(2))
    .min(1)
    .describe('units x categories: how many raters put the unit there; the same number of raters for every unit'),
});

const output = z.strictObject({
  kappa: nullableNumber,
  z: nullableNumber.describe('against no agreement beyond chance'),
  nullSe: nullableNumber,
  observed: nullableNumber,
  expected: nullableNumber,
  byCategory: z.array(nullableNumber),
  notDefined: z.enum(['too-few-units', 'one-category']).nullable(),
});

export const raterAgreementMany: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-agreement-many',
  summary: 'Agreement of many raters beyond chance: Fleiss kappa',
  input,
  output,
  run: ({ counts }) => {
    const kappa = fleissKappa(counts);
    if (kappa.ok) return { ...kappa.value, byCategory: [...kappa.value.byCategory], notDefined: null };
    return { kappa: null, z: null, nullSe: null, observed: null, expected: null, byCategory: [], notDefined: kappa.reason };
  },
};
