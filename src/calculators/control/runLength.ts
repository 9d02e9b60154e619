import { z } from 'zod';
import { cusumRunLength } from '../../core/stats/cusumRunLength.ts';
import { ewmaRunLength } from '../../core/stats/ewmaRunLength.ts';
import { multiRuleRunLength } from '../../core/stats/multiRuleRunLength.ts';
import { MULTI_RULES } from '../../core/stats/multiRules.ts';
import { shewhartRunLength } from '../../core/stats/shewhartRunLength.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber, positive, wouldHelp } from '../fields.ts';

const sides = z.literal([1, 2]).describe('1 watches for a rise only');
const shiftsSd = z.array(z.number().min(-100).max(100)).min(1).max(1000).describe('shifts of the mean in sd');

const input = z.discriminatedUnion('chart', [
  z.strictObject({ chart: z.literal('cusum'), k: z.number().min(0).max(10), h: positive.max(100), sides, shiftsSd }),
  z.strictObject({ chart: z.literal('ewma'), lambda: z.number().min(0.005).max(1), limit: positive.max(10), sides, shiftsSd }),
  z.strictObject({ chart: z.literal('shewhart'), limit: positive.max(100), sides, shiftsSd }),
  z.strictObject({ chart: z.literal('multi-rules'), rules: z.array(z.enum(MULTI_RULES)).min(1), shiftsSd }),
]);

const output = z.strictObject({
  averageRunLength: z
    .array(nullableNumber)
    .describe('points until the first signal, from a chart without history; null: too many to write'),
  wouldHelp,
});

export const runLength: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'run-length',
  summary: 'How many points a control chart takes on average until it signals, for each shift of the mean',
  input,
  output,
  run: (design) => {
    const lengths = design.shiftsSd.map((shiftSd) => lengthOf(design, shiftSd));
    return {
      averageRunLength: lengths.map((length) => (Number.isFinite(length) ? length : null)),
      wouldHelp: lengths.flatMap((length, i) =>
        Number.isFinite(length) ? [] : [`shiftsSd.${i}: such a chart practically never signals at a shift of ${design.shiftsSd[i]} sd`],
      ),
    };
  },
};

function lengthOf(design: z.infer<typeof input>, shiftSd: number): number {
  switch (design.chart) {
    case 'cusum':
      return cusumRunLength(design, shiftSd);
    case 'ewma':
      return ewmaRunLength(design, shiftSd);
    case 'shewhart':
      return shewhartRunLength(design.limit, design.sides, shiftSd);
    case 'multi-rules':
      return multiRuleRunLength(design.rules, shiftSd);
  }
}
