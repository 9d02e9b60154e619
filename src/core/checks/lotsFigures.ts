import type { OneWayComponents } from '../stats/variance/oneWayComponents.ts';
import type { NoiseFigure } from './noiseFigure.ts';

export interface LotsFigures {
  /** One swab after another of the same lot, by one pair of hands on one solution. */
  readonly swabs: NoiseFigure;
  readonly lots: NoiseFigure;
}

/** What a study of swabs within lots says. A swab is used up by its reading, so swabs of a lot are the repeats. */
export function lotsFigures({ anova, rawComponents, intervals }: OneWayComponents): LotsFigures {
  return {
    swabs: { variance: rawComponents.residual, interval: intervals.residual, degreesOfFreedom: anova.within.df },
    lots: { variance: rawComponents.group, interval: intervals.group, degreesOfFreedom: anova.between.df },
  };
}
