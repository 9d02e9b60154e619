import { type Interval, requireLevel } from '../interval.ts';
import { studentTQuantile } from '../studentT.ts';
import { dot, multiply } from './symmetricMatrix.ts';
import { averageOperatorAt, type TrendFit } from './trendFit.ts';

export interface TrendBandPoint extends Interval {
  readonly time: number;
  /** On the line. */
  readonly middle: number;
}

export interface TrendBandOptions {
  /** Whose line; without one the line common to all. */
  readonly subject?: string | undefined;
  /** Default 0.95. */
  readonly level?: number | undefined;
}

/**
 * Interval of a fitted line at given times: where the line itself lies, not where a next reading will fall.
 * A subject's line has the common slope and a level of its own. The variances are taken as known, as is usual; t quantiles with the degrees
 * of freedom between subjects (common line) or within them (a subject's line) make up for that, roughly.
 * @param times  finite, in the unit of the fit
 * @throws RangeError for a subject that is not in the fit
 * @accuracy covers 93 to 97 % of simulated lines of 12 people (test/property/coverage.test.ts)
 * @source henderson1975
 */
export function trendBand(fit: TrendFit, times: readonly number[], options: TrendBandOptions = {}): TrendBandPoint[] {
  const { subject, level = 0.95 } = options;
  const own = subject === undefined ? undefined : fit.subjects.find((one) => one.subject === subject);
  if (subject !== undefined && !own) throw new RangeError(`subject must be one of the fit: ${subject}`);
  const { meanTime, meanValue, effects, covariance } = fit.centred;
  const people = fit.subjects.length;
  const df = own ? fit.n - people - 1 : people - 1;
  const quantile = studentTQuantile((1 + requireLevel(level)) / 2, Math.max(1, df));
  return times.map((time) => {
    const weights = averageOperatorAt(time - meanTime, effects.length);
    const middle = meanValue + dot(weights, effects) + (own?.effect ?? 0);
    const open = weights.map((weight, i) => weight - (own?.shrinkage[i] ?? 0));
    const variance = dot(open, multiply(covariance, open)) + (own?.unscaledVariance ?? 0) * fit.variance.residual;
    const reach = quantile * Math.sqrt(variance);
    return { time, middle, low: middle - reach, high: middle + reach };
  });
}
