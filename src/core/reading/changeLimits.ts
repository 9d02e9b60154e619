import { Z_95 } from '../stats/normal.ts';
import { logVarianceOfCv } from './logSdOfCv.ts';
import { requireCount, requirePositive } from './requirePositive.ts';

export interface ChangeLimitsInput {
  /** Repeatability of one reading, coefficient of variation, fraction. */
  readonly cvAnalytical: number;
  /** Day-to-day variation within a person, coefficient of variation, fraction. */
  readonly cvWithinPerson: number;
  /** Default the two-sided 95 % point, 1.959963984540054. */
  readonly z?: number | undefined;
  /** Readings averaged per swab, default 1. */
  readonly assaysPerSample?: number | undefined;
  /** Swabs averaged per occasion, default 1. */
  readonly samplesPerOccasion?: number | undefined;
}

export interface ChangeLimits {
  /** Symmetric limit on the plain scale; may exceed 1, a fall that cannot happen. */
  readonly normalFraction: number;
  /** sd of the mean ln(reading) of one occasion. */
  readonly sdLog: number;
  /** (1 + riseFraction)(1 + fallFraction) = 1. */
  readonly riseFraction: number;
  readonly fallFraction: number;
}

/**
 * The smallest rise and fall between two occasions that noise alone rarely gives (reference change value).
 * Log-normal: the two variances add as ln(1 + cv^2), so the limits are unequal and a fall never passes 100 %.
 * `normalFraction` is the older symmetric value z sqrt2 sqrt(cvA^2/nA + cvI^2)/sqrt(nS), for comparison.
 * Assumes the same noise both times, no trend in between, independent occasions, one meter.
 * @returns fractions; riseFraction >= 0, fallFraction in (-1, 0]
 * @throws RangeError naming the field: cv 0 to 10, z above 0, counts whole from 1
 * @source fraser-harris1989
 * @source fokkema2006
 */
export function changeLimits(input: ChangeLimitsInput): ChangeLimits {
  const { cvAnalytical, cvWithinPerson, z = Z_95, assaysPerSample = 1, samplesPerOccasion = 1 } = input;
  requirePositive(z, 'z');
  requireCount(assaysPerSample, 'assaysPerSample');
  requireCount(samplesPerOccasion, 'samplesPerOccasion');
  const variance = logVarianceOfCv(cvAnalytical, 'cvAnalytical') / assaysPerSample + logVarianceOfCv(cvWithinPerson, 'cvWithinPerson');
  const sdLog = Math.sqrt(variance / samplesPerOccasion);
  const plainCv = Math.sqrt((cvAnalytical ** 2 / assaysPerSample + cvWithinPerson ** 2) / samplesPerOccasion);
  return { normalFraction: z * Math.SQRT2 * plainCv, sdLog, ...limitsOfDifference(Math.SQRT2 * sdLog, z) };
}

/**
 * Rise and fall, as fractions, that a difference of two ln(readings) with this sd passes by noise alone as rarely as `z` says.
 * @source fokkema2006
 */
export const limitsOfDifference = (sdOfDifference: number, z: number): Pick<ChangeLimits, 'riseFraction' | 'fallFraction'> => ({
  riseFraction: Math.expm1(z * sdOfDifference),
  fallFraction: Math.expm1(-z * sdOfDifference),
});
