import { requirePositive } from '../reading/requirePositive.ts';
import { type BootstrapYouden, bootstrapYouden } from '../stats/diagnostic/bootstrapYouden.ts';
import { type DelongAuc, delongAuc } from '../stats/diagnostic/delongAuc.ts';
import { type DiagnosticCounts, type LikelihoodRatios, likelihoodRatios } from '../stats/diagnostic/likelihoodRatios.ts';
import { outcomeTable } from '../stats/diagnostic/outcomeTable.ts';
import { type RocPoint, rocCurve } from '../stats/diagnostic/rocCurve.ts';
import { type YoudenCutoff, youdenCutoff } from '../stats/diagnostic/youdenCutoff.ts';
import type { Interval } from '../stats/interval.ts';
import { wilsonInterval } from '../stats/wilsonInterval.ts';
import type { SourceRef } from '../visit/answer.ts';
import { chooseOnePerPerson, type FollowedReading, type LeftOut } from './followedReadings.ts';

export interface LocalCutoffInput {
  /** Counted readings of one meter, any order, several of one person allowed. A number at the meter's limit is taken as that number. */
  readonly readings: readonly FollowedReading[];
  /** A new lesion counts up to so many calendar months after the reading, whole number, 1 or more. */
  readonly withinMonths: number;
  /** The practice's cut-off at present, RLU, above 0. */
  readonly cutoffRlu: number;
  /** Uniform numbers for the interval of the best cut-off. */
  readonly random: () => number;
  /** Default 2,000. */
  readonly resamples?: number | undefined;
}

export interface LocalCutoffStudy {
  readonly withLesion: number;
  readonly without: number;
  readonly leftOut: LeftOut;
  /** Why there is no result, or null: `too-few-with-lesion` and `too-few-without` under ten people. */
  readonly notEnough: 'too-few-with-lesion' | 'too-few-without' | null;
  /** How many more people of that group are needed before figures are given; 0 if none. */
  readonly stillNeeded: number;
  readonly result: LocalCutoffResult | null;
  /** Goes with every figure of this study, and with its absence. */
  readonly caution: string;
  readonly sources: readonly SourceRef[];
}

export interface LocalCutoffResult {
  readonly auc: DelongAuc;
  /** The interval of the area lies above a half: readings tell the two groups apart better than chance. */
  readonly tellsApart: boolean;
  readonly curve: readonly RocPoint[];
  /** `optimism` says how much of the index is expected to be lost on other people. */
  readonly best: YoudenCutoff & BootstrapYouden;
  readonly atPresentCutoff: {
    readonly cutoffRlu: number;
    readonly counts: DiagnosticCounts;
    readonly sensitivity: Interval & { readonly estimate: number };
    readonly specificity: Interval & { readonly estimate: number };
    readonly likelihoodRatios: LikelihoodRatios;
  };
}

/** Our own proposal: with fewer people in a group the curve is a handful of steps, and one person more moves the best cut-off anywhere. */
export const FEWEST_PER_GROUP = 10;

export const THIN_EVIDENCE =
  'Published evidence that a swab reading goes with later decay is thin. These are the figures of one practice, whose own care came between the reading and the outcome; they do not show what a reading means for one person.';

const SOURCES: readonly SourceRef[] = [
  { key: 'clinExpDentRes-atp', status: 'read', note: 'ATP against counts of bacteria, not against decay, in 38 adults' },
  { key: 'delong1988', status: 'memory', note: 'interval of the area' },
  { key: 'youden1950', status: 'memory', note: 'best cut-off' },
];

/**
 * The practice's own readings against new lesions: does a high reading go with a new lesion within so many months, and where?
 * Each person counts once, with the earliest reading whose outcome is known, since readings of one person are not independent.
 * A person is positive at the cut-off and above.
 * @returns counts always; `result` only from ten people in each group on, else `notEnough` with how many are missing
 * @throws RangeError naming the field
 * @source delong1988; youden1950; simel1991
 */
export function localCutoffStudy(input: LocalCutoffInput): LocalCutoffStudy {
  const { cutoffRlu, withinMonths } = input;
  requirePositive(cutoffRlu, 'cutoffRlu');
  const { withLesion, without, leftOut } = chooseOnePerPerson(input.readings, withinMonths);
  const missing = [FEWEST_PER_GROUP - withLesion.length, FEWEST_PER_GROUP - without.length] as const;
  const notEnough = missing[0] > 0 ? 'too-few-with-lesion' : missing[1] > 0 ? 'too-few-without' : null;
  return {
    withLesion: withLesion.length,
    without: without.length,
    leftOut,
    notEnough,
    stillNeeded: Math.max(0, notEnough === 'too-few-without' ? missing[1] : missing[0]),
    result: notEnough === null ? resultOf(withLesion, without, input) : null,
    caution: THIN_EVIDENCE,
    sources: SOURCES,
  };
}

function resultOf(withLesion: readonly number[], without: readonly number[], input: LocalCutoffInput): LocalCutoffResult | null {
  const { cutoffRlu, random, resamples } = input;
  const table = outcomeTable(withLesion, without);
  const [auc, curve, youden, resampled] = [
    delongAuc(table),
    rocCurve(table),
    youdenCutoff(table),
    bootstrapYouden(table, { random, resamples }),
  ];
  const counts = countsAt(cutoffRlu, withLesion, without);
  const ratios = likelihoodRatios(counts);
  if (!auc.ok || !curve.ok || !youden.ok || !resampled.ok || !ratios.ok) return null;
  return {
    auc: auc.value,
    tellsApart: auc.value.interval === null ? auc.value.auc === 1 : auc.value.interval.low > 0.5,
    curve: curve.value,
    best: { ...youden.value, ...resampled.value },
    atPresentCutoff: {
      cutoffRlu,
      counts,
      sensitivity: shareOf(counts.truePositive, withLesion.length),
      specificity: shareOf(counts.trueNegative, without.length),
      likelihoodRatios: ratios.value,
    },
  };
}

function countsAt(cutoffRlu: number, withLesion: readonly number[], without: readonly number[]): DiagnosticCounts {
  const atOrAbove = (list: readonly number[]) => list.filter((rlu) => rlu >= cutoffRlu).length;
  const [truePositive, falsePositive] = [atOrAbove(withLesion), atOrAbove(without)];
  return { truePositive, falseNegative: withLesion.length - truePositive, falsePositive, trueNegative: without.length - falsePositive };
}

const shareOf = (part: number, whole: number) => ({ estimate: part / whole, ...wilsonInterval(part, whole) });
