import { z } from 'zod';
import { logValues } from '../../core/stats/variance/logValues.ts';
import { type NestedComponents, nestedComponents } from '../../core/stats/variance/nestedComponents.ts';
import type { Calculator } from '../calculator.ts';
import { interval, measured } from '../fields.ts';
import { anovaRow, log, testedRow } from './measurementFields.ts';

const input = z.strictObject({
  observations: z.array(z.strictObject({ group: z.string(), member: z.string().describe('counts within its group'), value: measured })),
  log,
});

const variances = z.strictObject({ group: z.number(), member: z.number(), residual: z.number() });

const output = z.strictObject({
  anova: z.strictObject({ group: testedRow, member: testedRow, residual: anovaRow, total: anovaRow }),
  rawComponents: variances.describe('variances as estimated, may be negative'),
  components: variances.describe('negative ones set to 0'),
  intervals: z
    .strictObject({ group: interval, member: interval, residual: interval, withinGroup: interval, total: interval })
    .describe('95 %: exact for the residual, modified large-sample for the others'),
  shares: variances.describe('of the total variance, sum 1'),
});

export const gaugeNested: Calculator<z.infer<typeof input>, NestedComponents> = {
  name: 'gauge-nested',
  summary: 'How much of the spread comes from groups such as lots, their members such as swabs, and single readings',
  input,
  output,
  run: ({ observations, log: takesLog }) => nestedComponents(takesLog ? logValues(observations) : observations),
};
