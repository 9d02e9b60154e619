import { centredValues } from '../centredValues.ts';
import { oneWayAnova } from './oneWayAnova.ts';

/** Repeatability and reproducibility limits: 2.8 standard deviations, close to the 95 % limit of a difference of two results. */
const LIMIT_FACTOR = 2.8;

export interface PrecisionStudy {
  readonly mean: number;
  readonly repeatabilitySd: number;
  /** Between laboratories; 0 where the estimate of its variance is negative. */
  readonly betweenSd: number;
  /** As estimated: may be negative. */
  readonly rawBetweenVariance: number;
  readonly reproducibilitySd: number;
  /** Two results differ by more in about 1 of 20 pairs: within one laboratory, and between two. */
  readonly limits: { readonly repeatability: number; readonly reproducibility: number };
  /** Results per laboratory, corrected for unequal numbers. */
  readonly meanCount: number;
}

/**
 * Repeatability and reproducibility of a measurement done in several laboratories (meters, practices), one level, after ISO 5725-2.
 * @param laboratories  at least two; each with at least two results; numbers may differ; finite
 * @throws RangeError naming the laboratory with too few
 * @accuracy relative 1e-9 against R 4.2.2 (precisionStudy.test.ts)
 * @source iso5725-2
 */
export function precisionStudy(laboratories: readonly (readonly number[])[]): PrecisionStudy {
  requireLaboratories(laboratories);
  const counts = laboratories.map((results) => results.length);
  const n = counts.reduce((sum, count) => sum + count, 0);
  const meanCount = (n - counts.reduce((sum, count) => sum + count ** 2, 0) / n) / (laboratories.length - 1);
  const { between, within } = oneWayAnova(laboratories);
  const rawBetweenVariance = (between.meanSquare - within.meanSquare) / meanCount;
  const betweenVariance = Math.max(0, rawBetweenVariance);
  const repeatabilitySd = Math.sqrt(within.meanSquare);
  const reproducibilitySd = Math.sqrt(within.meanSquare + betweenVariance);
  return {
    mean: centredValues(laboratories.flat()).mean,
    repeatabilitySd,
    betweenSd: Math.sqrt(betweenVariance),
    rawBetweenVariance,
    reproducibilitySd,
    limits: { repeatability: LIMIT_FACTOR * repeatabilitySd, reproducibility: LIMIT_FACTOR * reproducibilitySd },
    meanCount,
  };
}

/** @throws RangeError under two laboratories, or naming the one with fewer than two results */
export function requireLaboratories(laboratories: readonly (readonly number[])[]): void {
  if (laboratories.length < 2) throw new RangeError(`laboratories must be at least two: ${laboratories.length}`);
  const bare = laboratories.findIndex((results) => results.length < 2);
  if (bare >= 0) throw new RangeError(`laboratories.${bare} must have at least two results: ${laboratories[bare]?.length}`);
}
