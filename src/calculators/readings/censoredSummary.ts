import { z } from 'zod';
import { censoredSummary as summarise } from '../../core/reading/censoredSummary.ts';
import type { Calculator } from '../calculator.ts';
import { bound, interval, nullableNumber, positive, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  readings: z.array(z.strictObject({ rlu: positive, bound: bound.optional() })).min(1),
  thresholdRlu: positive.optional(),
});

const output = z.strictObject({
  n: z.number(),
  nAtMost: z.number(),
  nAtLeast: z.number(),
  notDefined: z
    .enum(['all-at-most', 'all-at-least', 'no-spread', 'no-finite-estimate'])
    .nullable()
    .describe('why the estimates are null, if they are'),
  wouldHelp,
  meanLog: nullableNumber,
  sdLog: nullableNumber,
  geometricMeanRlu: nullableNumber,
  geometricSd: nullableNumber,
  geometricMeanInterval: interval.nullable(),
  logLikelihood: nullableNumber.describe('density on the RLU scale'),
  probabilityAboveThreshold: nullableNumber,
});

const WOULD_HELP = {
  'all-at-most': 'readings are all at most a limit of the meter: two different numbers within its scale would do',
  'all-at-least': 'readings are all at least a limit of the meter: two different numbers within its scale would do',
  'no-spread': 'readings do not differ, so they have no spread: a second, different reading would do',
  'no-finite-estimate': 'readings fit any spread, however large: more numbers within the scale of the meter would do',
} as const;

const NO_ESTIMATES = {
  meanLog: null,
  sdLog: null,
  geometricMeanRlu: null,
  geometricSd: null,
  geometricMeanInterval: null,
  logLikelihood: null,
  probabilityAboveThreshold: null,
} as const;

export const censoredSummary: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'censored-summary',
  summary: 'Geometric mean and spread of readings some of which only hit a limit of the meter',
  input,
  output,
  run: ({ readings, thresholdRlu }) => {
    const summary = summarise(readings, thresholdRlu);
    const counts = {
      n: readings.length,
      nAtMost: readings.filter((r) => r.bound === 'at-most').length,
      nAtLeast: readings.filter((r) => r.bound === 'at-least').length,
    };
    if (summary.ok) return { ...counts, notDefined: null, wouldHelp: [], ...summary.value };
    return { ...counts, notDefined: summary.reason, wouldHelp: [WOULD_HELP[summary.reason]], ...NO_ESTIMATES };
  },
};
