import { z } from 'zod';
import { blandAltman } from '../../core/stats/agreement/blandAltman.ts';
import { demingRegression } from '../../core/stats/agreement/demingRegression.ts';
import { exactLimitIntervals } from '../../core/stats/agreement/exactLimitIntervals.ts';
import { linConcordance } from '../../core/stats/agreement/linConcordance.ts';
import { MOST_PAIRS, passingBablok } from '../../core/stats/agreement/passingBablok.ts';
import type { Calculator } from '../calculator.ts';
import { interval, measured, nullableNumber, wouldHelp } from '../fields.ts';

const values = z.array(measured).min(2).max(MOST_PAIRS);
const input = z.strictObject({
  a: values.describe('first method, one value for each thing measured'),
  b: values.describe('second method, on the same things in the same order'),
  log: z.boolean().optional().describe('true: everything on natural logs; exp of bias and limits are then ratios a / b'),
});

const REASONS = ['too-few', 'no-spread', 'no-line'] as const;
const reason = z.enum(REASONS).nullable();

const output = z.strictObject({
  n: z.number(),
  blandAltman: z.strictObject({
    bias: z.number().describe('mean of a - b'),
    sd: z.number(),
    limits: interval,
    biasInterval: interval,
    lowerLimitInterval: interval.describe('by t'),
    upperLimitInterval: interval.describe('by t'),
    exactLowerLimitInterval: interval.nullable().describe('by noncentral t; null without spread'),
    exactUpperLimitInterval: interval.nullable(),
  }),
  ratio: z
    .strictObject({ geometricMean: z.number(), interval, limits: interval })
    .nullable()
    .describe('a / b, only on the log scale: bias, its interval and the limits transformed back'),
  concordance: nullableNumber.describe('Lin, moments with 1 / n'),
  concordanceInterval: interval.nullable(),
  deming: z
    .strictObject({
      intercept: z.number(),
      slope: z.number(),
      slopeInterval: interval.nullable().describe('null where too few pairs leave it open'),
      interceptInterval: interval.nullable(),
    })
    .nullable()
    .describe('b on a, error ratio 1, jackknife'),
  passingBablok: z
    .strictObject({
      intercept: z.number(),
      slope: z.number(),
      slopeInterval: interval.nullable().describe('null where too few pairs leave it open'),
      interceptInterval: interval.nullable(),
    })
    .nullable(),
  notDefined: z.strictObject({ concordance: reason, deming: reason, passingBablok: reason }).describe('why a part is null, if it is'),
  wouldHelp,
});

const WOULD_HELP = {
  'too-few': 'a and b must hold at least three pairs for Passing-Bablok',
  'no-spread': 'a and b do not vary, so there is no line: pairs further apart would do',
  'no-line': 'a and b give no line that is better than another: pairs further apart would do',
} as const;
const NO_INTERVAL = 'a and b are too few, or agree too well, for some interval: more pairs, with all their digits, would do';

export const methodAgreement: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'method-agreement',
  summary: 'Do two ways of measuring the same things agree? Bland-Altman, Lin, Deming, Passing-Bablok',
  input,
  output,
  run: ({ a: first, b: second, log = false }) => {
    const [a, b] = [toScale(first, log, 'a'), toScale(second, log, 'b')];
    const limits = blandAltman(a, b);
    if (!limits.ok) throw new RangeError('a must hold at least two values');
    const { n, bias, sd, limits: ends, biasInterval, lowerLimitInterval, upperLimitInterval } = limits.value;
    const exact = sd > 0 ? exactLimitIntervals({ bias, sd, n }) : null;
    const [concordance, deming, line] = [linConcordance(a, b), demingRegression(a, b), passingBablok(a, b)];
    const notDefined = { concordance: reasonOf(concordance), deming: reasonOf(deming), passingBablok: reasonOf(line) };
    const reasons = new Set(Object.values(notDefined).filter((why) => why !== null));
    const isOpen =
      exact === null ||
      (concordance.ok && concordance.value.interval === null) ||
      [deming, line].some((fit) => fit.ok && (fit.value.slopeInterval === null || fit.value.interceptInterval === null));
    return {
      n,
      blandAltman: {
        bias,
        sd,
        limits: ends,
        biasInterval,
        lowerLimitInterval,
        upperLimitInterval,
        exactLowerLimitInterval: exact?.lower ?? null,
        exactUpperLimitInterval: exact?.upper ?? null,
      },
      ratio: log ? { geometricMean: Math.exp(bias), interval: backFromLog(biasInterval), limits: backFromLog(ends) } : null,
      concordance: concordance.ok ? concordance.value.concordance : null,
      concordanceInterval: concordance.ok ? concordance.value.interval : null,
      deming: deming.ok ? lineOf(deming.value) : null,
      passingBablok: line.ok ? lineOf(line.value) : null,
      notDefined,
      wouldHelp: [...[...reasons].map((why) => WOULD_HELP[why]), ...(isOpen ? [NO_INTERVAL] : [])],
    };
  },
};

function toScale(values: readonly number[], log: boolean, name: string): readonly number[] {
  if (!log) return values;
  return values.map((value, i) => {
    if (!(value > 0)) throw new RangeError(`${name}.${i} must be above 0 on the log scale: ${value}`);
    return Math.log(value);
  });
}

type Interval = z.infer<typeof interval>;
const backFromLog = ({ low, high }: Interval): Interval => ({ low: Math.exp(low), high: Math.exp(high) });

interface Line {
  readonly intercept: number;
  readonly slope: number;
  readonly slopeInterval: Interval | null;
  readonly interceptInterval: Interval | null;
}
const lineOf = ({ intercept, slope, slopeInterval, interceptInterval }: Line): Line => ({
  intercept,
  slope,
  slopeInterval,
  interceptInterval,
});

const reasonOf = (result: { readonly ok: true } | { readonly ok: false; readonly reason: (typeof REASONS)[number] }) =>
  result.ok ? null : result.reason;
