import { compensatedSum } from './compensatedSum.ts';

export interface CentredValues {
  readonly mean: number;
  /** value - mean, in the same order. */
  readonly deviations: readonly number[];
}

/**
 * Mean and deviations from it. The first value is taken off before anything is added: readings that share leading digits then lose
 * nothing, and equal values deviate by exactly 0.
 * @param values  at least one
 * @throws RangeError without values
 */
export function centredValues(values: readonly number[]): CentredValues {
  const [first] = values;
  if (first === undefined) throw new RangeError('values must not be empty');
  const shifted = values.map((value) => value - first);
  const shiftedMean = compensatedSum(shifted) / values.length;
  return { mean: first + shiftedMean, deviations: shifted.map((value) => value - shiftedMean) };
}
