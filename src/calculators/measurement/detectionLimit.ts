import { z } from 'zod';
import { detectionLimit as compute } from '../../core/stats/detectionLimit.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';

const rlu = z.number().nonnegative();

const input = z.strictObject({
  blanksRlu: z.array(rlu).min(1).describe('readings of unused swabs'),
  lows: z
    .array(z.strictObject({ level: z.number().describe('known low amount, any unit'), rlu }))
    .describe('readings of low amounts, replicates at each level'),
});

const output = z.strictObject({
  limitOfBlankRlu: nullableNumber.describe('mean + z · sd of the blanks'),
  limitOfBlankRankRlu: nullableNumber.describe('from the ranks alone; needs ten blanks'),
  limitOfDetectionRlu: nullableNumber,
  sdLowRlu: nullableNumber.describe('of the low readings, pooled within levels'),
  dfLow: z.number(),
  notDefined: z
    .strictObject({
      limitOfBlankRlu: z.enum(['too-few-blanks', 'blanks-equal']).nullable(),
      limitOfBlankRankRlu: z.enum(['too-few-blanks']).nullable(),
      limitOfDetectionRlu: z.enum(['too-few-blanks', 'blanks-equal', 'no-low-replicates', 'lows-equal']).nullable(),
    })
    .describe('why a limit is null, if it is'),
});

export const detectionLimit: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'detection-limit',
  summary: 'The lowest reading that is more than an unused swab, and the least amount that is reliably seen',
  input,
  output,
  run: ({ blanksRlu, lows }) => {
    const { limitOfBlankRlu: blank, limitOfBlankRankRlu: rank, limitOfDetectionRlu: limit, sdLowRlu, dfLow } = compute(blanksRlu, lows);
    return {
      limitOfBlankRlu: blank.ok ? blank.value : null,
      limitOfBlankRankRlu: rank.ok ? rank.value : null,
      limitOfDetectionRlu: limit.ok ? limit.value : null,
      sdLowRlu: sdLowRlu ?? null,
      dfLow,
      notDefined: {
        limitOfBlankRlu: blank.ok ? null : blank.reason,
        limitOfBlankRankRlu: rank.ok ? null : rank.reason,
        limitOfDetectionRlu: limit.ok ? null : limit.reason,
      },
    };
  },
};
