import { type DemingRegression, demingRegression } from '../stats/agreement/demingRegression.ts';
import { linConcordance } from '../stats/agreement/linConcordance.ts';
import type { Interval } from '../stats/interval.ts';
import { pairMoments } from '../stats/pairMoments.ts';
import type { Result } from '../stats/result.ts';
import { type ComparePairsInput, comparePairs, type NoComparison, type PairComparison, usablePairs } from './comparePairs.ts';

export interface MeterComparison extends PairComparison {
  /** null where the solutions lie too close together to say anything of other levels. */
  readonly level: LevelDependence | null;
  /** Lin's concordance of the logs, null without spread. Depends on the range of the solutions. */
  readonly concordance: number | null;
  /** Why the verdict is what it is. */
  readonly because: 'ratio' | 'level';
}

/** Whether one ratio serves at every level: on the log scale that is a slope of 1. */
export interface LevelDependence {
  /** Slope of ln(new) on ln(old), Deming with error ratio 1. */
  readonly slope: number;
  readonly slopeInterval: Interval;
  /** new / old by that line, at the lowest and at the highest old reading. */
  readonly ratioAtLowest: number;
  readonly ratioAtHighest: number;
  readonly lowestRlu: number;
  readonly highestRlu: number;
  /** The interval of the slope leaves 1 out, and the ratio leaves the limits at one end. */
  readonly changes: boolean;
}

/** The solutions must spread this many times as wide as the noise of a pair before a line through them means something. Our own proposal. */
const LEAST_SPREAD = 3;

/**
 * A new meter against the one in use, on ATP solutions read on both: ratio, agreement, and whether it holds at low and high readings.
 * Whatever the verdict, a new meter begins a new baseline: its readings are not drawn into one trend with the old ones, and its cut-off is
 * the one of its own instructions.
 * @param input  see `comparePairs`; solutions from the low to the high end of what is read on people
 * @returns `differs` with `because: 'level'` where one ratio does not serve at every level; reasons as in `comparePairs`
 * @throws RangeError naming the field
 * @source linnet1993; lin1989
 */
export function compareMeters(input: ComparePairsInput): Result<MeterComparison, NoComparison> {
  const comparison = comparePairs(input);
  if (!comparison.ok) return comparison;
  const usable = usablePairs(input.pairs);
  const [olds, news] = [usable.map((pair) => Math.log(pair.oldRlu)), usable.map((pair) => Math.log(pair.newRlu))];
  const concordance = linConcordance(olds, news);
  const level = levelOf(olds, news, comparison.value);
  const differsByLevel = level?.changes === true && comparison.value.verdict !== 'differs';
  return {
    ok: true,
    value: {
      ...comparison.value,
      verdict: differsByLevel ? 'differs' : comparison.value.verdict,
      because: differsByLevel ? 'level' : 'ratio',
      concordance: concordance.ok ? concordance.value.concordance : null,
      level,
    },
  };
}

function levelOf(olds: readonly number[], news: readonly number[], { withinLimits }: PairComparison): LevelDependence | null {
  const line = demingRegression(olds, news);
  if (!line.ok || line.value.slopeInterval === null) return null;
  const { slope, slopeInterval } = line.value;
  const { saa, n } = pairMoments(olds, news);
  if (!(Math.sqrt(saa / (n - 1)) > LEAST_SPREAD * noiseAbout(line.value, olds, news))) return null;
  const [lowest, highest] = [Math.min(...olds), Math.max(...olds)];
  const [ratioAtLowest, ratioAtHighest] = [ratioAt(line.value, lowest), ratioAt(line.value, highest)];
  const isOutside = (ratio: number) => ratio < withinLimits.low || ratio > withinLimits.high;
  const isNotOne = slopeInterval.low > 1 || slopeInterval.high < 1;
  return {
    slope,
    slopeInterval,
    ratioAtLowest,
    ratioAtHighest,
    lowestRlu: Math.exp(lowest),
    highestRlu: Math.exp(highest),
    changes: isNotOne && (isOutside(ratioAtLowest) || isOutside(ratioAtHighest)),
  };
}

/** sd of a pair about the line, as of ln(new / old) where the slope is 1. */
function noiseAbout({ slope, intercept }: DemingRegression, olds: readonly number[], news: readonly number[]): number {
  const squares = olds.reduce((sum, old, i) => sum + ((news[i] as number) - intercept - slope * old) ** 2, 0);
  return Math.sqrt((2 * squares) / (1 + slope ** 2) / (olds.length - 2));
}

const ratioAt = ({ slope, intercept }: DemingRegression, logOld: number): number => Math.exp(intercept + (slope - 1) * logOld);
