import { z } from 'zod';
import { detectionLimit as compute } from '../../core/stats/detectionLimit.ts';
import type { Calculator } from '../calculator.ts';
import { measured, nullableNumber, wouldHelp } from '../fields.ts';

const rlu = measured.min(0);

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
  wouldHelp,
});

const WOULD_HELP = {
  'too-few-blanks': 'blanksRlu must be at least two, and ten for the limit from ranks',
  'blanks-equal': 'blanksRlu are all the same, so they have no spread: enter them with all their digits, or read more unused swabs',
  'no-low-replicates': 'lows must hold at least two readings of one level',
  'lows-equal': 'lows are the same at each level, so they have no spread: read more of them',
} as const;

export const detectionLimit: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'detection-limit',
  summary: 'The lowest reading that is more than an unused swab, and the least amount that is reliably seen',
  input,
  output,
  run: ({ blanksRlu, lows }) => {
    const { limitOfBlankRlu: blank, limitOfBlankRankRlu: rank, limitOfDetectionRlu: limit, sdLowRlu, dfLow } = compute(blanksRlu, lows);
    const notDefined = {
      limitOfBlankRlu: blank.ok ? null : blank.reason,
      limitOfBlankRankRlu: rank.ok ? null : rank.reason,
      limitOfDetectionRlu: limit.ok ? null : limit.reason,
    };
    const reasons = new Set(Object.values(notDefined).filter((reason) => reason !== null));
    return {
      limitOfBlankRlu: blank.ok ? blank.value : null,
      limitOfBlankRankRlu: rank.ok ? rank.value : null,
      limitOfDetectionRlu: limit.ok ? limit.value : null,
      sdLowRlu: sdLowRlu ?? null,
      dfLow,
      notDefined,
      wouldHelp: [...reasons].map((reason) => WOULD_HELP[reason]),
    };
  },
};
