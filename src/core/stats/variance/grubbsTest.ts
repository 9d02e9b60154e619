import { centredValues } from '../centredValues.ts';
import { requireProbability } from '../requireArgument.ts';
import { sampleSd } from '../sampleSd.ts';
import { studentTQuantile } from '../studentT.ts';

export interface GrubbsTest {
  /** Distance of the largest and of the smallest value from the mean, in sd. */
  readonly high: number;
  readonly low: number;
}

/**
 * Grubbs' statistics for one outlying value at either end, such as a laboratory's mean.
 * @param values  at least three, not all equal, finite
 * @returns null where all values are equal
 * @throws RangeError under three values
 * @source grubbs1969; iso5725-2
 */
export function grubbsTest(values: readonly number[]): GrubbsTest | null {
  if (values.length < 3) throw new RangeError(`values must be at least three: ${values.length}`);
  const { deviations } = centredValues(values);
  const sd = sampleSd(values);
  return sd > 0 ? { high: Math.max(...deviations) / sd, low: -Math.min(...deviations) / sd } : null;
}

/**
 * Critical value of Grubbs' statistics when either end may be the odd one.
 * @param n     number of values, at least three
 * @param risk  of calling any value odd, both ends together: 0.05 for a straggler, 0.01 for an outlier
 * @source grubbs1969
 */
export function grubbsLimit(n: number, risk: number): number {
  if (!(n >= 3)) throw new RangeError(`n must be at least three: ${n}`);
  const t = studentTQuantile(1 - requireProbability(risk) / (2 * n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt(t ** 2 / (n - 2 + t ** 2));
}
