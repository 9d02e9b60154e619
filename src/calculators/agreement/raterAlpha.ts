import { z } from 'zod';
import { krippendorffAlpha } from '../../core/stats/agreement/krippendorffAlpha.ts';
import type { Calculator } from '../calculator.ts';
import { measured, nullableNumber, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  ratings: z.array(z.array(measured.nullable()).min(1)).min(2).describe('raters x units, null = missing'),
  metric: z.enum(['nominal', 'ordinal', 'interval', 'ratio']),
});

const output = z.strictObject({
  alpha: nullableNumber,
  units: nullableNumber.describe('units with two ratings or more'),
  ratings: nullableNumber.describe('ratings on these units'),
  observedDisagreement: nullableNumber,
  expectedDisagreement: nullableNumber,
  notDefined: z.enum(['no-pairs', 'one-value']).nullable(),
  wouldHelp,
});

const WOULD_HELP = {
  'no-pairs': 'ratings must hold at least one unit with two ratings',
  'one-value': 'ratings are all the same, so chance alone agrees in full: units that are rated otherwise would do',
} as const;

export const raterAlpha: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'rater-alpha',
  summary: 'Agreement of any number of raters with ratings missing: Krippendorff alpha',
  input,
  output,
  run: ({ ratings, metric }) => {
    const alpha = krippendorffAlpha(ratings, metric);
    if (alpha.ok) return { ...alpha.value, notDefined: null, wouldHelp: [] };
    const none = { alpha: null, units: null, ratings: null, observedDisagreement: null, expectedDisagreement: null };
    return { ...none, notDefined: alpha.reason, wouldHelp: [WOULD_HELP[alpha.reason]] };
  },
};
