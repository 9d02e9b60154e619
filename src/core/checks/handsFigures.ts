import type { CrossedComponents } from '../stats/variance/crossedComponents.ts';
import type { NoiseFigure } from './noiseFigure.ts';

export interface HandsFigures {
  /** One swab after another by the same hands. */
  readonly swabs: NoiseFigure;
  /** Between hands, and what single hands do differently on single solutions where that shows. */
  readonly hands: NoiseFigure;
  readonly together: NoiseFigure;
}

/**
 * What a crossed study of hands says: from the form without interaction where the interaction looks like noise (p above 0.25), else from
 * the full one.
 * @source aiag-msa4; burdick2005
 */
export function handsFigures(components: CrossedComponents): HandsFigures {
  const { anova, pooled, poolsAt25Percent, rawComponents: raw, intervals } = components;
  const operators = anova.operator.df;
  if (poolsAt25Percent) {
    const { repeatability, operator } = pooled.rawComponents;
    return {
      swabs: { variance: repeatability, interval: pooled.intervals.repeatability, degreesOfFreedom: pooled.anova.error.df },
      hands: { variance: operator, interval: pooled.intervals.operator, degreesOfFreedom: operators },
      together: { variance: repeatability + Math.max(0, operator), interval: pooled.intervals.gauge, degreesOfFreedom: operators },
    };
  }
  const hands = raw.operator + raw.interaction;
  return {
    swabs: { variance: raw.repeatability, interval: intervals.repeatability, degreesOfFreedom: anova.error.df },
    hands: { variance: hands, interval: intervals.reproducibility, degreesOfFreedom: operators },
    together: { variance: raw.repeatability + Math.max(0, hands), interval: intervals.gauge, degreesOfFreedom: operators },
  };
}
