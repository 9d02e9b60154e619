import { z } from 'zod';
import { cusumChart } from '../../core/stats/cusumChart.ts';
import { ewmaChart } from '../../core/stats/ewmaChart.ts';
import { individualsLimits } from '../../core/stats/individualsLimits.ts';
import { multiRuleFlags } from '../../core/stats/multiRules.ts';
import { type Calculator, NotDefinedError } from '../calculator.ts';
import { interval, measured, positive } from '../fields.ts';

const target = z.strictObject({ mean: z.number(), sd: positive });

const input = z
  .strictObject({
    values: z.array(measured).min(1).optional().describe('oldest first; give the logs of readings, whose noise grows with their size'),
    target: target.optional().describe('without it, the mean of `values` and the sd from their moving range'),
    z: z.array(measured).min(1).optional().describe('instead of `values`: distance from the target in sd'),
    cusum: z.strictObject({ k: z.number().nonnegative(), h: positive }).optional(),
    ewma: z.strictObject({ lambda: positive.max(1), limit: positive }).optional(),
  })
  .superRefine((given, context) => {
    if ((given.values === undefined) === (given.z === undefined))
      context.addIssue({ code: 'custom', path: ['values'], message: 'give either values or z' });
    if (given.z !== undefined && given.target !== undefined)
      context.addIssue({ code: 'custom', path: ['target'], message: 'belongs to values; z is already counted from its target' });
  });

const indexes = z.array(z.int()).describe('from 0');
const output = z.strictObject({
  target: target.nullable().describe('what z was counted from; null if z was given'),
  individuals: z
    .strictObject({ mean: z.number(), sd: z.number(), limits: interval, meanMovingRange: z.number(), movingRangeLimit: z.number() })
    .nullable()
    .describe('chart of single values with limits from the moving range; null without values, or without spread'),
  z: z.array(z.number()),
  flags: z.strictObject({ '1-2s': indexes, '1-3s': indexes, '2-2s': indexes, 'R-4s': indexes, '4-1s': indexes, '10-x': indexes }),
  cusum: z
    .strictObject({ upper: z.array(z.number()), lower: z.array(z.number()), firstSignal: z.int().nullable() })
    .nullable()
    .describe('null unless asked for'),
  ewma: z
    .strictObject({ values: z.array(z.number()), halfWidths: z.array(z.number()), firstSignal: z.int().nullable() })
    .nullable()
    .describe('null unless asked for'),
});

export const controlChart: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'control-chart',
  summary: 'Control values against their target: six control rules, cumulative sum, moving average',
  input,
  output,
  run: ({ values, target, z, cusum, ewma }) => {
    const limits = values && individualsLimits(values);
    if (limits && !limits.ok && !target) {
      const why = limits.reason === 'no-spread' ? 'are all the same' : 'are fewer than two';
      throw new NotDefinedError(`values ${why}, so they give no sd: add a target`, 'values');
    }
    const individuals = limits?.ok ? limits.value : null;
    const from = target ?? (individuals && { mean: individuals.mean, sd: individuals.sd });
    const distances = z ?? (from ? (values ?? []).map((value) => (value - from.mean) / from.sd) : []);
    const sums = cusum && cusumChart(distances, cusum.k, cusum.h);
    const average = ewma && ewmaChart(distances, ewma.lambda, ewma.limit);
    const flags = multiRuleFlags(distances);
    return {
      target: from,
      individuals,
      z: [...distances],
      flags: {
        '1-2s': [...flags['1-2s']],
        '1-3s': [...flags['1-3s']],
        '2-2s': [...flags['2-2s']],
        'R-4s': [...flags['R-4s']],
        '4-1s': [...flags['4-1s']],
        '10-x': [...flags['10-x']],
      },
      cusum: sums ? { upper: [...sums.upper], lower: [...sums.lower], firstSignal: sums.firstSignal ?? null } : null,
      ewma: average ? { values: [...average.values], halfWidths: [...average.halfWidths], firstSignal: average.firstSignal ?? null } : null,
    };
  },
};
