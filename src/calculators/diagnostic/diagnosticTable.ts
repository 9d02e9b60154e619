import { z } from 'zod';
import { type LikelihoodRatio, likelihoodRatios } from '../../core/stats/diagnostic/likelihoodRatios.ts';
import { postTestProbability } from '../../core/stats/diagnostic/postTestProbability.ts';
import { wilsonInterval } from '../../core/stats/wilsonInterval.ts';
import type { Calculator } from '../calculator.ts';
import { nullableNumber } from '../fields.ts';

const cell = z.int().nonnegative().max(1e12);
const input = z.strictObject({
  truePositive: cell,
  falseNegative: cell,
  falsePositive: cell,
  trueNegative: cell,
  preTestProbability: z.number().min(0).max(1).optional().describe('adds the chance after a positive and after a negative test'),
});

const share = z.strictObject({ estimate: z.number(), low: z.number(), high: z.number() }).nullable();
const ratio = z.strictObject({ estimate: nullableNumber, low: nullableNumber, high: nullableNumber });

const output = z.strictObject({
  sensitivity: share.describe('Wilson; null where nobody has the outcome'),
  specificity: share.describe('null where everybody has it'),
  positivePredictive: share.describe('null where no test is positive'),
  negativePredictive: share.describe('null where every test is positive'),
  likelihoodRatioPositive: ratio.describe('log method; null parts where a count is 0'),
  likelihoodRatioNegative: ratio,
  postTestPositive: nullableNumber,
  postTestNegative: nullableNumber,
  notDefined: z.array(z.string()).describe('one sentence for each part that is null'),
});

const NONE: LikelihoodRatio = { estimate: null, low: null, high: null };

export const diagnosticTable: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'diagnostic-table',
  summary: 'Sensitivity, specificity, predictive values and likelihood ratios with intervals',
  input,
  output,
  run: ({ preTestProbability, ...counts }) => {
    const { truePositive, falseNegative, falsePositive, trueNegative } = counts;
    const ratios = likelihoodRatios(counts);
    const { positive, negative } = ratios.ok ? ratios.value : { positive: NONE, negative: NONE };
    const after = ({ estimate }: LikelihoodRatio) => {
      if (preTestProbability === undefined || estimate === null || (preTestProbability === 1 && estimate === 0)) return null;
      return postTestProbability(preTestProbability, estimate);
    };
    return {
      sensitivity: shareOf(truePositive, falseNegative),
      specificity: shareOf(trueNegative, falsePositive),
      positivePredictive: shareOf(truePositive, falsePositive),
      negativePredictive: shareOf(trueNegative, falseNegative),
      likelihoodRatioPositive: positive,
      likelihoodRatioNegative: negative,
      postTestPositive: after(positive),
      postTestNegative: after(negative),
      notDefined: [
        ...(truePositive + falseNegative === 0 ? ['Nobody has the outcome: no sensitivity and no likelihood ratios.'] : []),
        ...(falsePositive + trueNegative === 0 ? ['Everybody has the outcome: no specificity and no likelihood ratios.'] : []),
        ...(truePositive + falsePositive === 0 ? ['No test is positive: no positive predictive value.'] : []),
        ...(trueNegative + falseNegative === 0 ? ['No test is negative: no negative predictive value.'] : []),
        ...(ratios.ok ? [...whyNoRatio('positive', positive), ...whyNoRatio('negative', negative)] : []),
      ],
    };
  },
};

const shareOf = (part: number, rest: number) =>
  part + rest === 0 ? null : { estimate: part / (part + rest), ...wilsonInterval(part, part + rest) };

function whyNoRatio(result: 'positive' | 'negative', { estimate, low }: LikelihoodRatio): string[] {
  if (estimate === null) return [`Nobody without the outcome has a ${result} test: its likelihood ratio has no limit.`];
  if (low !== null) return [];
  return estimate === 0
    ? [`Nobody with the outcome has a ${result} test: its likelihood ratio has no interval.`]
    : [`Every test is ${result}: its likelihood ratio has no interval.`];
}
