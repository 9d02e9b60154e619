import { centredValues } from './centredValues.ts';
import { compensatedSum } from './compensatedSum.ts';

/**
 * Standard deviation of a sample, divisor n - 1.
 * @param values  at least two
 * @throws RangeError with fewer
 * @accuracy see univariate.test.ts: the digits that doubles leave in the NIST NumAcc sets
 */
export function sampleSd(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError(`values must be at least two: ${values.length}`);
  const { deviations } = centredValues(values);
  return Math.sqrt(compensatedSum(deviations.map((d) => d * d)) / (values.length - 1));
}
