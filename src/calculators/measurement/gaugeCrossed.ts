import { z } from 'zod';
import { type CrossedComponents, crossedComponents } from '../../core/stats/variance/crossedComponents.ts';
import { logValues } from '../../core/stats/variance/logValues.ts';
import type { Calculator } from '../calculator.ts';
import { interval, measured } from '../fields.ts';
import { anovaRow, log, testedRow } from './measurementFields.ts';

const input = z.strictObject({
  observations: z.array(z.strictObject({ part: z.string(), operator: z.string(), value: measured })),
  log,
});

const variance = z.number();
const single = { repeatability: variance, operator: variance, part: variance };
const singleIntervals = { repeatability: interval, operator: interval, part: interval };
const full = z.strictObject({ ...single, interaction: variance });

const output = z.strictObject({
  anova: z.strictObject({ part: testedRow, operator: testedRow, interaction: testedRow, error: anovaRow, total: anovaRow }),
  rawComponents: full.describe('variances as estimated, may be negative'),
  components: full.describe('negative ones set to 0'),
  intervals: z
    .strictObject({ ...singleIntervals, interaction: interval, reproducibility: interval, gauge: interval, total: interval })
    .describe('95 %: exact for repeatability, modified large-sample for the others'),
  pooled: z
    .strictObject({
      anova: z.strictObject({ part: testedRow, operator: testedRow, error: anovaRow }),
      rawComponents: z.strictObject(single),
      components: z.strictObject(single),
      intervals: z.strictObject({ ...singleIntervals, gauge: interval, total: interval }),
    })
    .describe('without interaction'),
  poolsAt25Percent: z.boolean().describe('p of the interaction above 0.25: then the four below are of the pooled form'),
  shares: full.describe('of the total variance, sum 1'),
  studyVariation: z.strictObject({ ...single, reproducibility: variance, gauge: variance }).describe('of the total standard deviation'),
  variances: z.strictObject({ reproducibility: variance, gauge: variance, total: variance }),
  distinctCategories: z.number(),
});

export const gaugeCrossed: Calculator<z.infer<typeof input>, CrossedComponents> = {
  name: 'gauge-crossed',
  summary: 'How much of the spread comes from swabs, hands and what is measured, when each person measures each part',
  input,
  output,
  run: ({ observations, log: takesLog }) => crossedComponents(takesLog ? logValues(observations) : observations),
};
