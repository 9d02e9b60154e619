import { centredValues } from './centredValues.ts';
import { compensatedSum } from './compensatedSum.ts';

/**
 * Lag-1 autocorrelation: the sum of products of neighbouring deviations over the sum of all their squares.
 * @param values  at least two, not all equal, oldest first
 * @returns between -1 and 1
 * @throws RangeError otherwise
 */
export function lagOneAutocorrelation(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError(`values must be at least two: ${values.length}`);
  const { deviations } = centredValues(values);
  const squares = compensatedSum(deviations.map((d) => d * d));
  if (squares === 0) throw new RangeError('values must not all be equal');
  return compensatedSum(deviations.slice(1).map((d, i) => d * (deviations[i] ?? 0))) / squares;
}
