import { z } from 'zod';
import { krippendorffAlpha } from '../../core/stats/agreement/krippendorffAlpha.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';

const input = z.strictObject({
  ratings: z.array(z.array(nullableNumber).min(1)).min(2).describe('raters x units, null = missing'),
  metric: z.enum(['nominal', 'ordinal', 'interval', 'ratio']),
});

const output = z.strictObject({
  alpha: nullableNumber,
  units: nullableNumber.describe('units with two ratings or more'),
  ratings: nullableNumber.describe('ratings on these units'),
  observedDisagreement: nullableNumber,
  expectedDisagreement: nullableNumber,
  notDefined: z.enum(['no-pairs', 'one-value']).nullable(),
});

export const raterAlpha: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-alpha',
  summary: 'Agreement of any number of raters with ratings missing: Krippendorff alpha',
  input,
  output,
  run: ({ ratings, metric }) => {
    const alpha = krippendorffAlpha(ratings, metric);
    if (alpha.ok) return { ...alpha.value, notDefined: null };
    return { alpha: null, units: null, ratings: null, observedDisagreement: null, expectedDisagreement: null, notDefined: alpha.reason };
  },
};
