import { z } from 'zod';
import { cohenKappa } from '../../core/stats/agreement/cohenKappa.ts';
import type { Calculator } from '../calculator.ts';
import { interval, nullableNumber, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  table: z
    .array(z.array(z.int().nonnegative().max(1e12)).min(2))
    .min(2)
    .describe('square: row = category of the first rater, column = of the second, cell = number of units'),
  weights: z.enum(['none', 'linear', 'quadratic']).optional().describe('default none; the others take the categories as ordered'),
});

const output = z.strictObject({
  n: nullableNumber,
  kappa: nullableNumber,
  se: nullableNumber.describe('Fleiss, Cohen and Everitt'),
  interval: interval.nullable(),
  intervalNotDefined: z
    .enum(['no-width'])
    .nullable()
    .describe('no-width: full agreement has a standard error of 0, which says nothing of its own width'),
  observed: nullableNumber.describe('weighted'),
  expected: nullableNumber.describe('weighted'),
  notDefined: z.enum(['no-units', 'one-category']).nullable(),
  wouldHelp,
});

const WOULD_HELP = {
  'no-units': 'table is empty: at least one unit judged by both raters is needed',
  'one-category': 'table has every unit in one category, so agreement by chance is full: units of a second category would do',
  'no-width': 'table shows full agreement, which says nothing of its own width: more units would do',
} as const;

export const raterAgreement: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-agreement',
  summary: 'Agreement of two raters beyond chance: kappa, plain or weighted',
  input,
  output,
  run: ({ table, weights }) => {
    const kappa = cohenKappa(table, weights);
    if (kappa.ok && kappa.value.interval !== null) return { ...kappa.value, intervalNotDefined: null, notDefined: null, wouldHelp: [] };
    if (kappa.ok) return { ...kappa.value, intervalNotDefined: 'no-width', notDefined: null, wouldHelp: [WOULD_HELP['no-width']] };
    const none = { n: null, kappa: null, se: null, interval: null, intervalNotDefined: null, observed: null, expected: null };
    return { ...none, notDefined: kappa.reason, wouldHelp: [WOULD_HELP[kappa.reason]] };
  },
};
