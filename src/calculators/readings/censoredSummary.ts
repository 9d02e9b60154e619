import { z } from 'zod';
import { censoredSummary as summarise } from '../../core/reading/censoredSummary.ts';
import type { Calculator } from '../calculator.ts';
import { bound, interval, nullableNumber, positive } from '../fields.ts';

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
  meanLog: nullableNumber,
  sdLog: nullableNumber,
  geometricMeanRlu: nullableNumber,
  geometricSd: nullableNumber,
  geometricMeanInterval: interval.nullable(),
  logLikelihood: nullableNumber.describe('density on the RLU scale'),
  probabilityAboveThreshold: nullableNumber,
});

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
    return summary.ok ? { ...counts, notDefined: null, ...summary.value } : { ...counts, notDefined: summary.reason, ...NO_ESTIMATES };
  },
};
