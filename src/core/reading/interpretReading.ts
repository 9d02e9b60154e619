import { keepByKey } from '../keep/keepByKey.ts';
import { normalCdf, normalQuantile, Z_95 } from '../stats/normal.ts';
import { boundedPosterior } from './boundedPosterior.ts';
import { logSdOfCv } from './logSdOfCv.ts';
import { requireCount, requirePositive } from './requirePositive.ts';
import type { Bound } from './types.ts';

export interface ReadingInput {
  /** One reading, or the geometric mean of `replicates` independent ones. Relative light units of one meter. */
  readonly readingRlu: number;
  /** Default exact. */
  readonly bound?: Bound | undefined;
  readonly cutoffRlu: number;
  /** Coefficient of variation of one reading, fraction. */
  readonly cv: number;
  /** Default 1. */
  readonly replicates?: number | undefined;
  /** One-sided chance of a wrong verdict that the guard band allows, default 0.05. */
  readonly risk?: number | undefined;
  /** What is believed of the true level before the reading: log-normal. */
  readonly prior?: { readonly geometricMeanRlu: number; readonly sdLog: number } | undefined;
}

export interface ReadingInterpretation {
  readonly sdLog: number;
  readonly intervalRlu: { readonly low: number; readonly high: number } | null;
  readonly probabilityAbove: number | null;
  readonly probabilityBelow: number | null;
  readonly posterior: { readonly meanLog: number; readonly sdLog: number } | null;
  readonly guardBand: { readonly lowAtMostRlu: number; readonly highAtLeastRlu: number };
  /** null: the bound does not decide. */
  readonly verdict: 'below' | 'too-close' | 'above' | null;
  readonly settleChance: number | null;
  readonly daysToDecide: number | null;
}

/** The same with the noise as sd of ln(reading) of one reading, above 0. */
export type LogReadingInput = Omit<ReadingInput, 'cv'> & { readonly sdLogSingle: number };

/** More swabs than this are not worth taking: "swabbing will not settle this". */
const MOST_DAYS = 3;

/**
 * A reading against the meter's cut-off, noise allowed for: true level log-normal about the reading, flat prior unless one is given.
 * Verdict and guard band are of the reading alone; a prior moves interval, probabilities and settle chance, never the verdict.
 *
 * `settleChance`: the predictive chance that the geometric mean with one more independent reading leaves the guard band of that
 * larger number of readings, on either side. null when the reading is already outside (nothing left to settle) or only a bound.
 *
 * `daysToDecide`: ceil((z sdLog / |ln(reading / cut-off)|)^2), the number of single readings whose mean would be decided if it stayed
 * where this reading is; null above 3, and for a bound that does not decide.
 *
 * With a bound and no prior, interval and probabilities are null. With a prior they come from `boundedPosterior`.
 * @returns probabilities adding to 1; the interval (95 %) holds the reading when no prior is given
 * @throws RangeError naming the field: reading, cut-off and prior above 0 (a reading of 0 only as at-most and without a prior),
 *         cv in (0, 10], replicates a whole number from 1, risk in (0, 0.5)
 * @source jcgm106
 */
export function interpretReading({ cv, ...reading }: ReadingInput): ReadingInterpretation {
  const input = withDefaults(reading);
  checkInput(input);
  return interpret({ ...input, sdLogSingle: logSdOfCv(cv) });
}

/**
 * The same where the noise is a sum of variances on the log scale.
 * @throws RangeError as above; sdLogSingle above 0
 * @source jcgm106
 */
export function interpretLogReading({ sdLogSingle, ...reading }: LogReadingInput): ReadingInterpretation {
  const input = withDefaults(reading);
  checkInput(input);
  requirePositive(sdLogSingle, 'sdLogSingle');
  return interpret({ ...input, sdLogSingle });
}

type Checked = Omit<ReadingInput, 'cv' | 'bound'> & { readonly bound: Bound; readonly replicates: number; readonly risk: number };

const withDefaults = ({ bound = 'exact', replicates = 1, risk = 0.05, ...rest }: Omit<ReadingInput, 'cv'>): Checked => ({
  ...rest,
  bound,
  replicates,
  risk,
});

function interpret(input: Checked & { readonly sdLogSingle: number }): ReadingInterpretation {
  const { readingRlu, cutoffRlu, prior, bound, replicates, risk, sdLogSingle } = input;
  const sdLog = sdLogSingle / Math.sqrt(replicates);
  const z = oneSidedPoint(risk);
  const guardBand = { lowAtMostRlu: cutoffRlu * Math.exp(-z * sdLog), highAtLeastRlu: cutoffRlu * Math.exp(z * sdLog) };
  const verdict = verdictOf(readingRlu, bound, guardBand);
  const knowledge = levelOf({ logReading: Math.log(readingRlu), sdLog, bound, prior });
  const distance = Math.log(readingRlu / cutoffRlu);

  return {
    sdLog,
    intervalRlu: knowledge && { low: Math.exp(knowledge.low), high: Math.exp(knowledge.high) },
    probabilityAbove: knowledge?.above(Math.log(cutoffRlu)) ?? null,
    probabilityBelow: knowledge?.below(Math.log(cutoffRlu)) ?? null,
    posterior: knowledge && prior ? { meanLog: knowledge.mean, sdLog: knowledge.sd } : null,
    guardBand,
    verdict,
    settleChance:
      bound === 'exact' && verdict === 'too-close' && knowledge
        ? settleChanceOf({ distance, replicates, sdLogSingle, z, level: { mean: knowledge.mean - Math.log(cutoffRlu), sd: knowledge.sd } })
        : null,
    daysToDecide: bound === 'exact' || verdict !== null ? daysToDecideOf((z * sdLogSingle) / Math.abs(distance)) : null,
  };
}

const oneSidedPoint = keepByKey((risk: number) => normalQuantile(1 - risk));

function checkInput({ readingRlu, cutoffRlu, prior, bound, replicates, risk }: Checked): void {
  if (!(readingRlu === 0 && bound === 'at-most' && prior === undefined)) requirePositive(readingRlu, 'readingRlu');
  requirePositive(cutoffRlu, 'cutoffRlu');
  requireCount(replicates, 'replicates');
  if (!(risk > 0 && risk < 0.5)) throw new RangeError(`risk must be between 0 and 0.5, exclusive: ${risk}`);
  if (prior === undefined) return;
  requirePositive(prior.geometricMeanRlu, 'prior.geometricMeanRlu');
  requirePositive(prior.sdLog, 'prior.sdLog');
}

function verdictOf(readingRlu: number, bound: Bound, band: ReadingInterpretation['guardBand']): ReadingInterpretation['verdict'] {
  if (bound !== 'at-least' && readingRlu <= band.lowAtMostRlu) return 'below';
  if (bound !== 'at-most' && readingRlu >= band.highAtLeastRlu) return 'above';
  return bound === 'exact' ? 'too-close' : null;
}

/** What is known of the true level on the log scale. Without a bound each tail is computed on its own side, so neither loses its digits. */
interface Level {
  readonly mean: number;
  readonly sd: number;
  readonly low: number;
  readonly high: number;
  readonly above: (logRlu: number) => number;
  readonly below: (logRlu: number) => number;
}

interface LogReading {
  readonly logReading: number;
  readonly sdLog: number;
  readonly bound: Bound;
  readonly prior: ReadingInput['prior'];
}

function levelOf({ logReading, sdLog, bound, prior }: LogReading): Level | null {
  if (prior === undefined) return bound === 'exact' ? normalLevel(logReading, sdLog) : null;
  const priorMean = Math.log(prior.geometricMeanRlu);
  if (bound === 'exact') {
    const weight = prior.sdLog ** 2 / (prior.sdLog ** 2 + sdLog ** 2);
    return normalLevel(priorMean + weight * (logReading - priorMean), sdLog * Math.sqrt(weight));
  }
  const posterior = boundedPosterior({ priorMean, priorSd: prior.sdLog, bound: logReading, noiseSd: sdLog, side: bound });
  const [low, high] = [posterior.quantile(0.025), posterior.quantile(0.975)];
  return { mean: posterior.mean, sd: posterior.sd, low, high, above: (x) => 1 - posterior.cdf(x), below: posterior.cdf };
}

const normalLevel = (mean: number, sd: number): Level => ({
  mean,
  sd,
  low: mean - Z_95 * sd,
  high: mean + Z_95 * sd,
  above: (x) => normalCdf((mean - x) / sd),
  below: (x) => normalCdf((x - mean) / sd),
});

interface Settle {
  /** ln(reading / cut-off) */
  readonly distance: number;
  readonly replicates: number;
  readonly sdLogSingle: number;
  readonly z: number;
  /** True level relative to the cut-off, as known now. */
  readonly level: { readonly mean: number; readonly sd: number };
}

/** The next reading is normal about what is known of the level; the mean of all readings is then compared with its own, narrower band. */
function settleChanceOf({ distance, replicates, sdLogSingle, z, level }: Settle): number {
  const count = replicates + 1;
  const mean = (replicates * distance + level.mean) / count;
  const sd = Math.hypot(level.sd, sdLogSingle) / count;
  const limit = (z * sdLogSingle) / Math.sqrt(count);
  return normalCdf((mean - limit) / sd) + normalCdf((-limit - mean) / sd);
}

/** `ratio`: guard band of one reading / distance from the cut-off, both on the log scale. */
function daysToDecideOf(ratio: number): number | null {
  // A reading exactly on the guard band needs one day, whatever the last digit of its logarithm.
  const days = Math.max(1, Math.ceil(ratio ** 2 * (1 - 1e-12)));
  return days <= MOST_DAYS ? days : null;
}
