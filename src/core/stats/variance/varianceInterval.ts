import { chiSquareQuantile } from '../chiSquare.ts';
import { type Interval, requireLevel } from '../interval.ts';
import type { AnovaRow } from './anovaRow.ts';

/**
 * Exact confidence interval of the variance that a mean square estimates, for normal values: df times mean square over chi-square.
 * @param level  default 0.95, equal tails
 */
export function varianceInterval({ meanSquare, df }: Pick<AnovaRow, 'meanSquare' | 'df'>, level = 0.95): Interval {
  const tail = (1 - requireLevel(level)) / 2;
  return { low: (df * meanSquare) / chiSquareQuantile(1 - tail, df), high: (df * meanSquare) / chiSquareQuantile(tail, df) };
}
