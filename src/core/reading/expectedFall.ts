import type { Result } from '../stats/result.ts';
import { requirePositive } from './requirePositive.ts';

/** First counted readings of a practice on one meter, one for each person, as a log-normal summary. */
export interface FirstReadings {
  readonly people: number;
  readonly geometricMeanRlu: number;
  /** sd of ln(reading) between single readings of different people: their levels and the noise of one occasion together. */
  readonly sdLog: number;
}

export interface ExpectedFallInput {
  /** The earlier reading, RLU, above 0. */
  readonly firstRlu: number;
  readonly population: FirstReadings;
  /** sd of ln(reading) of one occasion: repeatability and day-to-day variation together, above 0. */
  readonly sdLogSingle: number;
}

export interface ExpectedFall {
  /** Expected fall of the middle person who began at `firstRlu`, fraction of the first reading, 0 to below 1. */
  readonly fraction: number;
  /** Share of the spread between single readings that lies between people, 0 to 1. */
  readonly reliability: number;
  readonly people: number;
}

/** Our own proposal: with fewer, the mean and above all the spread of a practice are too uncertain to give a number. */
export const FEWEST_PEOPLE = 20;

/**
 * How far a second reading is expected to fall from a high first one when nothing has changed but the noise (regression to the mean).
 * Model: ln(reading) = level of the person + noise of the occasion, levels normal between people, noise independent. With reliability
 * R = 1 - noise variance / variance of single readings, the second is expected at mean + R (first - mean) on the log scale, so that
 * the middle ratio second / first is exp(-(1 - R) (ln first - mean)). A noise larger than the whole spread counts as R = 0.
 * First readings of a practice are of people seen for a reason, so its own mean is taken and not one from elsewhere.
 * @returns the fall; or `too-few-people` under 20, `not-above-mean` where no fall is expected
 * @throws RangeError naming the parameter
 * @accuracy exact for the model; against 200,000 simulated people within 0.04 of the fraction
 * @source project
 */
export function expectedFall(input: ExpectedFallInput): Result<ExpectedFall, 'too-few-people' | 'not-above-mean'> {
  const { firstRlu, population, sdLogSingle } = input;
  requirePositive(firstRlu, 'firstRlu');
  requirePositive(population.geometricMeanRlu, 'population.geometricMeanRlu');
  requirePositive(population.sdLog, 'population.sdLog');
  requirePositive(sdLogSingle, 'sdLogSingle');
  if (population.people < FEWEST_PEOPLE) return { ok: false, reason: 'too-few-people' };
  const above = Math.log(firstRlu / population.geometricMeanRlu);
  if (above <= 0) return { ok: false, reason: 'not-above-mean' };
  const reliability = Math.max(0, 1 - (sdLogSingle / population.sdLog) ** 2);
  return { ok: true, value: { fraction: -Math.expm1(-(1 - reliability) * above), reliability, people: population.people } };
}
