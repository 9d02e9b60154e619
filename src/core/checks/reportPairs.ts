import { compareLots } from '../meter/compareLots.ts';
import { compareMeters, type MeterComparison } from '../meter/compareMeters.ts';
import { FEWEST_PAIRS, type NoComparison, type PairComparison } from '../meter/comparePairs.ts';
import { sayPercent } from '../reading/sayNoise.ts';
import { sayNumber } from '../reading/sayRlu.ts';
import type { Interval } from '../stats/interval.ts';
import { type CountedRuns, type NumberedRun, sayMissing } from './countedRuns.ts';
import { ALL_ALIKE, cannot, type StudyOutcome } from './studyOutcome.ts';

export interface PairsToReport {
  readonly kind: 'new-lot' | 'meters';
  /** Of the lot or meter in use, and of the one that is to follow it. */
  readonly oldId: string;
  readonly newId: string;
  /** The lot or meter that a run is taken with. */
  readonly idOf: (run: NumberedRun) => string | undefined;
  readonly cutoffRlu: number;
  /** How far apart still counts as the same, fraction. */
  readonly withinFraction: number;
  /** sd of ln RLU of one swab on one solution where the practice has measured it. */
  readonly knownSdLog?: number | undefined;
}

/** A new lot or meter against the one in use: each solution is read with both, and a pair with one number missing is left out. */
export function reportPairs(runs: CountedRuns, study: PairsToReport): StudyOutcome {
  const { pairs, alone } = pairsOf(runs, study);
  const input = { pairs, withinFraction: study.withinFraction, knownSdLog: study.knownSdLog };
  const compared = study.kind === 'meters' ? compareMeters(input) : compareLots(input, study.cutoffRlu);
  if (!compared.ok) return sayNoComparison(compared.reason, pairs.length, runs);
  const { value } = compared;
  const sentences = [
    sayVerdict(value, study),
    'atCutoffRlu' in value
      ? `Where a swab of the old lot reads the cut-off of ${sayNumber(study.cutoffRlu)}, one of the new lot is expected to read ${sayNumber(Math.round(value.atCutoffRlu.estimate))} (${rangeOf(value.atCutoffRlu, (rlu) => sayNumber(Math.round(rlu)))}).`
      : sayLevels(value as MeterComparison),
    ...(study.kind === 'new-lot' && value.verdict === 'too-few' ? [NO_TARGET] : []),
    ...(study.kind === 'meters' ? ['Whatever it says, a new meter begins a new baseline, with the cut-off of its own instructions.'] : []),
    ...(value.scattersMore ? ['These pairs scatter more than the noise measured here before, so that noise was not used.'] : []),
  ].filter((sentence) => sentence !== '');
  const missing =
    runs.missing.length === 0 ? [] : [`${sayMissing(runs)} ${alone > 0 ? 'A pair with one number missing is left out.' : ''}`.trim()];
  const { ratio, verdict } = value;
  const figures = {
    oldId: study.oldId,
    newId: study.newId,
    pairs: value.pairs,
    ratio: ratio.estimate,
    low: ratio.low,
    high: ratio.high,
    verdict,
  };
  const leftOut = runs.counted.length - 2 * pairs.length;
  const body = { rows: [], counted: 2 * pairs.length, leftOut: leftOut === 0 ? [] : alonesOf(runs, study), ...figures };
  return { ok: true, report: { sentences: [...sentences, ...missing], estimates: [], body } };
}

/** The ratio may lie anywhere, so nothing is carried along. */
const NO_TARGET = 'No control target is carried over from it: the new lot builds up its own from its first controls.';

const keyOf = ({ part, replicate }: NumberedRun): string => JSON.stringify([part, replicate]);

function byPair({ counted }: CountedRuns, { idOf, oldId, newId }: PairsToReport) {
  const found = new Map<string, { old?: number; new?: number; runs: number[] }>();
  for (const { run, ln } of counted) {
    const id = idOf(run);
    const pair = found.get(keyOf(run)) ?? { runs: [] };
    pair.runs.push(run.index);
    if (id === oldId) pair.old = Math.exp(ln);
    if (id === newId) pair.new = Math.exp(ln);
    found.set(keyOf(run), pair);
  }
  return [...found.values()];
}

function pairsOf(runs: CountedRuns, study: PairsToReport) {
  const found = byPair(runs, study);
  const pairs = found.flatMap((pair) => (pair.old === undefined || pair.new === undefined ? [] : [{ oldRlu: pair.old, newRlu: pair.new }]));
  return { pairs, alone: found.length - pairs.length };
}

const alonesOf = (runs: CountedRuns, study: PairsToReport): number[] =>
  byPair(runs, study).flatMap((pair) => (pair.old === undefined || pair.new === undefined ? pair.runs : []));

function sayNoComparison(reason: NoComparison, pairs: number, runs: CountedRuns): StudyOutcome {
  if (reason === 'no-spread') return ALL_ALIKE;
  return cannot(
    `${pairs === 0 ? 'No pair is' : pairs === 1 ? 'One pair is' : `${pairs} pairs are`} complete, too few to say anything.`,
    `Needed are at least ${FEWEST_PAIRS} solutions read with both. ${sayMissing(runs)}`.trim(),
  );
}

const times = (ratio: number): string => ratio.toFixed(2);
const rangeOf = ({ low, high }: Interval, say: (value: number) => string): string => `95 % interval ${say(low)} to ${say(high)}`;

function sayVerdict({ verdict, ratio, pairs, ...value }: PairComparison, { kind, withinFraction }: PairsToReport): string {
  const [both, single] = kind === 'meters' ? ['meters', 'meter'] : ['lots', 'lot'];
  const within = sayPercent(withinFraction);
  const seen = `The new ${single} reads ${times(ratio.estimate)} times the old one (${rangeOf(ratio, times)}, ${pairs} pairs)`;
  if (verdict === 'same-within') return `Both ${both} read alike within ${within}. ${seen}.`;
  if (verdict === 'too-few') return `Too few pairs to say whether both ${both} read alike within ${within}. ${seen}.`;
  const isByLevel = 'because' in value && value.because === 'level';
  return isByLevel
    ? `The ${both} differ by more than ${within} at one end of the scale. ${seen} on the whole.`
    : `The ${both} differ by more than ${within}. ${seen}: their readings are not held against each other.`;
}

function sayLevels({ level }: MeterComparison): string {
  if (level === null) return 'The solutions lie too close together to say whether that holds at low and at high readings alike.';
  const { lowestRlu, highestRlu, ratioAtLowest, ratioAtHighest, changes } = level;
  const ends = `${times(ratioAtLowest)} times at ${sayNumber(Math.round(lowestRlu))} RLU and ${times(ratioAtHighest)} times at ${sayNumber(Math.round(highestRlu))}`;
  return changes ? `It depends on the level: ${ends}.` : `It shows no dependence on the level that this study can see: ${ends}.`;
}
