import { z } from 'zod';
import { bootstrapYouden } from '../../core/stats/diagnostic/bootstrapYouden.ts';
import { delongAuc } from '../../core/stats/diagnostic/delongAuc.ts';
import { outcomeTable } from '../../core/stats/diagnostic/outcomeTable.ts';
import { rocCurve } from '../../core/stats/diagnostic/rocCurve.ts';
import { youdenCutoff } from '../../core/stats/diagnostic/youdenCutoff.ts';
import { seededUniform } from '../../core/stats/seededUniform.ts';
import type { Calculator } from '../calculator.ts';
import { count, interval, nullableNumber, wouldHelp } from '../fields.ts';

const input = z.strictObject({
  cases: z.array(z.strictObject({ value: z.number().describe('high means positive'), positive: z.boolean() })).min(1),
  bootstrap: z
    .strictObject({ resamples: count.max(100_000).optional().describe('default 2,000'), seed: z.int().optional().describe('default 1') })
    .optional()
    .describe('adds an interval of the cut-off'),
  curve: z.boolean().optional().describe('true: adds the points of the curve'),
});

const output = z.strictObject({
  nPositive: z.number(),
  nNegative: z.number(),
  auc: nullableNumber,
  aucSe: nullableNumber.describe('DeLong; null with a single case in a group'),
  aucInterval: interval.nullable(),
  intervalNotDefined: z
    .enum(['one-positive', 'one-negative', 'no-width'])
    .nullable()
    .describe('why the interval is null, if it is; no-width: groups that do not overlap, or values that are all alike'),
  youden: z
    .strictObject({
      cutoff: z.number().describe('observed value, positive at this value and above; the lowest if several tie'),
      sensitivity: z.number(),
      specificity: z.number(),
      index: z.number(),
      tied: z.array(z.number()),
    })
    .nullable(),
  bootstrap: z.strictObject({ resamples: z.number(), cutoffInterval: interval, medianCutoff: z.number(), optimism: z.number() }).nullable(),
  curve: z
    .array(z.strictObject({ cutoff: nullableNumber, sensitivity: z.number(), specificity: z.number() }))
    .nullable()
    .describe('from the cut-off that nobody reaches (null) down to the lowest value'),
  notDefined: z.enum(['no-positives', 'no-negatives']).nullable(),
  wouldHelp,
});

const WOULD_HELP = {
  'no-positives': 'cases must hold at least one that is positive',
  'no-negatives': 'cases must hold at least one that is not positive',
  'one-positive': 'cases must hold a second one that is positive, for an interval',
  'one-negative': 'cases must hold a second one that is not positive, for an interval',
  'no-width': 'cases do not overlap, or are all alike, which says nothing of the width of the interval: more cases would do',
} as const;

export const cutoffStudy: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'cutoff-study',
  summary: 'How well a value tells cases with an outcome from those without: ROC with DeLong, Youden cut-off',
  input,
  output,
  run: ({ cases, bootstrap, curve = false }) => {
    const valuesWhere = (positive: boolean) => cases.filter((one) => one.positive === positive).map(({ value }) => value);
    const table = outcomeTable(valuesWhere(true), valuesWhere(false));
    const counts = { nPositive: table.nPositive, nNegative: table.nNegative };
    const [auc, youden, points] = [delongAuc(table), youdenCutoff(table), rocCurve(table)];
    if (!auc.ok || !youden.ok || !points.ok) {
      const none = { auc: null, aucSe: null, aucInterval: null, intervalNotDefined: null, youden: null, bootstrap: null, curve: null };
      const notDefined = table.nPositive === 0 ? 'no-positives' : 'no-negatives';
      return { ...counts, ...none, notDefined, wouldHelp: [WOULD_HELP[notDefined]] };
    }
    const intervalNotDefined = auc.value.interval === null ? whyNoInterval(counts) : null;
    const { seed = 1, resamples } = bootstrap ?? {};
    const resampled = bootstrap && bootstrapYouden(table, { random: seededUniform(seed), resamples });
    return {
      ...counts,
      auc: auc.value.auc,
      aucSe: auc.value.se,
      aucInterval: auc.value.interval,
      intervalNotDefined,
      youden: { ...youden.value, tied: [...youden.value.tied] },
      bootstrap: resampled?.ok ? resampled.value : null,
      curve: curve ? [...points.value] : null,
      notDefined: null,
      wouldHelp: intervalNotDefined === null ? [] : [WOULD_HELP[intervalNotDefined]],
    };
  },
};

function whyNoInterval({ nPositive, nNegative }: { readonly nPositive: number; readonly nNegative: number }) {
  if (nPositive === 1) return 'one-positive';
  return nNegative === 1 ? 'one-negative' : 'no-width';
}
