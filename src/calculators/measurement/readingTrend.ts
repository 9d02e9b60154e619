import { z } from 'zod';
import { trendBand } from '../../core/stats/mixed/trendBand.ts';
import { crossedOperatorTrend, randomInterceptTrend } from '../../core/stats/mixed/trendFit.ts';
import { logValues } from '../../core/stats/variance/logValues.ts';
import type { Calculator } from '../calculator.ts';
import { measured } from '../fields.ts';
import { log } from './measurementFields.ts';

const input = z.strictObject({
  observations: z.array(
    z.strictObject({
      subject: z.string(),
      time: measured.describe('any unit; the slope is per unit of it'),
      value: measured,
      operator: z.string().optional().describe('in every observation or in none: five or more are a random effect, fewer fixed ones'),
    }),
  ),
  log,
  bandAt: z.array(measured).optional().describe('times at which to give the 95 % band of the line common to all subjects'),
});

const number = z.number();

const output = z.strictObject({
  intercept: number.describe('at time 0, of the average operator'),
  slope: number,
  interceptSe: number,
  slopeSe: number,
  variance: z.strictObject({
    subject: number,
    operator: number.optional().describe('only where operators are a random effect'),
    residual: number,
  }),
  logLikelihood: number.describe('restricted, with all constants'),
  n: number,
  subjects: number,
  operators: z.array(z.strictObject({ operator: z.string(), effect: number.describe('difference from the average operator') })),
  band: z.array(z.strictObject({ time: number, middle: number, low: number, high: number })),
});

export const readingTrend: Calculator<z.infer<typeof input>, z.infer<typeof output>> = {
  name: 'reading-trend',
  summary: 'The common trend of several people, each with a level of their own, by restricted maximum likelihood',
  input,
  output,
  run: ({ observations, log: takesLog, bandAt = [] }) => {
    const list = takesLog ? logValues(observations) : observations;
    const crossed = list.some(({ operator }) => operator !== undefined);
    const fit = crossed ? crossedOperatorTrend(list) : randomInterceptTrend(list);
    const { operator, ...variance } = fit.variance;
    return {
      intercept: fit.intercept,
      slope: fit.slope,
      interceptSe: fit.interceptSe,
      slopeSe: fit.slopeSe,
      variance: fit.operatorEffect === 'random' ? { ...variance, operator } : variance,
      logLikelihood: fit.logLikelihood,
      n: fit.n,
      subjects: fit.subjects.length,
      operators: [...fit.operators],
      band: trendBand(fit, bandAt),
    };
  },
};
