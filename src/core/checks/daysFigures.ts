import type { AnovaRow } from '../stats/variance/anovaRow.ts';
import { componentInterval } from '../stats/variance/componentEstimate.ts';
import { varianceInterval } from '../stats/variance/varianceInterval.ts';
import type { NoiseFigure } from './noiseFigure.ts';

export interface DaysFigures {
  /** From one day to the other in one person, with the noise of the swabs in it. */
  readonly days: NoiseFigure;
  /** Without the noise of the swabs; absent where that is not known. */
  readonly withinPerson?: NoiseFigure | undefined;
}

/**
 * What two days of each person say of the change from day to day.
 * @param within  mean square within people, of ln RLU, one degree of freedom for each pair
 * @param swabs   noise of one swab as measured or assumed: variance and its degrees of freedom
 */
export function daysFigures(
  within: Pick<AnovaRow, 'meanSquare' | 'df'>,
  swabs?: { readonly variance: number; readonly degreesOfFreedom: number },
): DaysFigures {
  const days = { variance: within.meanSquare, interval: varianceInterval(within), degreesOfFreedom: within.df };
  if (!swabs) return { days };
  const terms = [
    { coefficient: 1, row: within },
    { coefficient: -1, row: { meanSquare: swabs.variance, df: swabs.degreesOfFreedom } },
  ];
  const variance = within.meanSquare - swabs.variance;
  return { days, withinPerson: { variance, interval: componentInterval(terms, 0.95), degreesOfFreedom: within.df } };
}
