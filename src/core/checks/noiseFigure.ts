import { cvOfLogVariance } from '../reading/sayNoise.ts';
import type { Interval } from '../stats/interval.ts';

/** One part of the noise as a study found it. */
export interface NoiseFigure {
  /** Of ln RLU, as estimated: below 0 where the study saw less than chance alone would give. */
  readonly variance: number;
  /** Of the variance, 95 %, no lower than 0. */
  readonly interval: Interval;
  /** Of the mean square that carries the estimate. */
  readonly degreesOfFreedom: number;
}

/** Coefficient of variation as a fraction; a variance below 0 shows nothing and counts as 0. */
export const cvOfFigure = ({ variance }: NoiseFigure): number => cvOfLogVariance(Math.max(0, variance));

/** How far apart the ends of the interval lie, as coefficients of variation. */
export const widthAsCv = ({ interval }: NoiseFigure): number => cvOfLogVariance(interval.high) - cvOfLogVariance(interval.low);
