import { z } from 'zod';
import { fleissKappa } from '../../core/stats/agreement/fleissKappa.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  counts: z
    .array(z.array(z.int().nonnegative().max(1e12)).min(2))
    .min(1)
    .describe('units x categories: how many raters put the unit there; the same number of raters for every unit'),
});

const output = z.strictObject({
  kappa: nullableNumber,
  z: nullableNumber.describe('against no agreement beyond chance'),
  nullSe: nullableNumber,
  observed: nullableNumber,
  expected: nullableNumber,
  byCategory: z.array(nullableNumber).describe('null for a category that nobody used'),
  notDefined: z.enum(['too-few-units', 'one-category']).nullable(),
  wouldHelp,
});

const WOULD_HELP = {
  'too-few-units': 'counts must be of at least two units',
  'one-category': 'counts are all in one category, so agreement by chance is full: units of a second category would do',
} as const;

export const raterAgreementMany: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-agreement-many',
  summary: 'Agreement of many raters beyond chance: Fleiss kappa',
  input,
  output,
  run: ({ counts }) => {
    const kappa = fleissKappa(counts);
    if (kappa.ok) return { ...kappa.value, byCategory: [...kappa.value.byCategory], notDefined: null, wouldHelp: [] };
    const none = { kappa: null, z: null, nullSe: null, observed: null, expected: null, byCategory: [] };
    return { ...none, notDefined: kappa.reason, wouldHelp: [WOULD_HELP[kappa.reason]] };
  },
};
