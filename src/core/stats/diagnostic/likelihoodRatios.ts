import { Z_95 } from '../normal.ts';
import { requireAboveZero } from '../requireArgument.ts';
import type { Result } from '../result.ts';

/** A table of a test against the outcome, counts. */
export interface DiagnosticCounts {
  readonly truePositive: number;
  readonly falseNegative: number;
  readonly falsePositive: number;
  readonly trueNegative: number;
}

export interface LikelihoodRatio {
  /** 0 or more; null = without limit, since nobody without the outcome had this result. */
  readonly estimate: number | null;
  /** null, like `high`, where a count of 0 leaves the log method without a width. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface LikelihoodRatios {
  /** How much more often the test is positive with the outcome than without. */
  readonly positive: LikelihoodRatio;
  /** How much more often it is negative with the outcome than without. */
  readonly negative: LikelihoodRatio;
}

/**
 * Likelihood ratios of a positive and of a negative test, with intervals on the log scale. No half is added to a count of 0:
 * the answer is then that there is no interval.
 * @param z  above 0, default 1.959964 (95 %)
 * @returns `no-positives`, `no-negatives`: nobody with, or without, the outcome
 * @throws RangeError naming the count
 * @accuracy relative 1e-12 against R 4.2.2
 * @source simel1991
 */
export function likelihoodRatios(counts: DiagnosticCounts, z = Z_95): Result<LikelihoodRatios, 'no-positives' | 'no-negatives'> {
  requireAboveZero(z, 'z');
  for (const [name, count] of Object.entries(counts))
    if (!(Number.isSafeInteger(count) && count >= 0)) throw new RangeError(`${name} must be a whole number of 0 or more: ${count}`);
  const { truePositive, falseNegative, falsePositive, trueNegative } = counts;
  const [withIt, without] = [truePositive + falseNegative, falsePositive + trueNegative];
  if (withIt === 0) return { ok: false, reason: 'no-positives' };
  if (without === 0) return { ok: false, reason: 'no-negatives' };
  return {
    ok: true,
    value: {
      positive: ratioOf(truePositive, withIt, falsePositive, without, z),
      negative: ratioOf(falseNegative, withIt, trueNegative, without, z),
    },
  };
}

function ratioOf(part: number, whole: number, otherPart: number, otherWhole: number, z: number): LikelihoodRatio {
  if (otherPart === 0) return { estimate: null, low: null, high: null };
  const estimate = part / whole / (otherPart / otherWhole);
  if (part === 0) return { estimate, low: null, high: null };
  // Differences of reciprocals, so that a share of 1 gives exactly 0.
  const variance = 1 / part - 1 / whole + (1 / otherPart - 1 / otherWhole);
  const factor = Math.exp(z * Math.sqrt(variance));
  return variance > 0 ? { estimate, low: estimate / factor, high: estimate * factor } : { estimate, low: null, high: null };
}
