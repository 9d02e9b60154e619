import { chiSquareTail } from '../stats/chiSquareTail.ts';
import { type KnownNoiseFit, knownNoiseFit, type NoisyValue } from '../stats/knownNoiseFit.ts';
import { Z_95 } from '../stats/normal.ts';
import type { Result } from '../stats/result.ts';
import { type MeterNoise, noiseOfMeter } from './blendNoise.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import { trendPoint } from './lookPoint.ts';
import { sumOfParts } from './noiseSums.ts';
import type { NoiseTable } from './noiseTable.ts';
import type { Bound, Meter, ReadingState } from './types.ts';

/** One swab of a person; hands and lot absent = not known. */
export interface SeriesReading {
  readonly takenAt: string;
  readonly rlu: number | null;
  readonly bound: Bound;
  readonly state: ReadingState;
  readonly meterId: string;
  readonly operator?: string | null | undefined;
  readonly lotId?: string | null | undefined;
}

export interface SeriesMean {
  readonly rlu: number;
  /** 95 %, from the noise of the readings alone. */
  readonly lowRlu: number;
  readonly highRlu: number;
}

export interface SeriesTrend {
  readonly days: number;
  /** Of the line from the first counted reading to the last, fraction; its limits allow for a look after each reading. */
  readonly change: { readonly fraction: number; readonly low: number; readonly high: number };
  readonly perMonthFraction: number;
  readonly verdict: 'rise' | 'fall' | 'within-noise';
  /** The line and its 95 % band, evenly spaced in time. */
  readonly band: readonly { readonly atMs: number; readonly rlu: number; readonly lowRlu: number; readonly highRlu: number }[];
  /** Whether the readings lie about the line as noise would have them; null where one is a bound. */
  readonly moreThanNoise: boolean | null;
}

export interface PersonSeries<R extends SeriesReading = SeriesReading> {
  readonly meter: Meter;
  /** Oldest first. */
  readonly counted: readonly R[];
  /** With a number that does not count: drawn hollow, and in nothing that is worked out. */
  readonly hollow: readonly R[];
  readonly mean: Result<SeriesMean, 'none-counted' | 'all-at-most' | 'all-at-least'>;
  readonly trend: Result<SeriesTrend, 'too-few' | 'too-few-exact'>;
}

/** A line through two readings is their difference, which is told as a change. */
export const FEWEST_FOR_TREND = 3;
const BAND_POINTS = 25;
const MONTH_MS = 30.4375 * 86_400_000;
const DAY_MS = 86_400_000;
/** 1 in 100 where only noise is at work. */
const RARE_SPREAD = 0.01;

/**
 * The readings of one person on each meter apart: geometric mean and trend on the log scale. The few readings of one person say little
 * of their own spread, so the noise is that of the meter (`blendNoise`), and a mixed model over people is not needed: its shrinkage
 * would draw a person to others. Hands and lots, where measured, are effects that readings share; one that is not known is its own.
 * Numbers at a limit of the meter count as bounds.
 * @param readings  of one person, any order; those of meters not in the list are left out
 * @returns one series for each meter that has a reading with a number, in the order of the meters
 * @throws RangeError naming a reading whose time is no time
 * @accuracy without bounds equal to generalised least squares by its closed form, 1e-10
 */
export function personSeries<R extends SeriesReading>(
  readings: readonly R[],
  meters: readonly Meter[],
  table: NoiseTable,
): readonly PersonSeries<R>[] {
  return meters.flatMap((meter) => {
    const own = readings.filter((r) => r.meterId === meter.id && r.rlu !== null).sort((a, b) => msOf(a) - msOf(b));
    return own.length === 0 ? [] : [seriesOf(own, meter, table)];
  });
}

function seriesOf<R extends SeriesReading>(own: readonly R[], meter: Meter, table: NoiseTable): PersonSeries<R> {
  const counted = own.filter(({ state }) => state === 'valid' || state === 'flagged');
  const hollow = own.filter((reading) => !counted.includes(reading));
  const swabs = toSwabs(counted, meter, noiseOfMeter(table, meter));
  return { meter, counted, hollow, mean: meanOf(swabs), trend: trendOf(swabs, trendPoint(table)) };
}

function msOf({ takenAt }: SeriesReading): number {
  const ms = Date.parse(takenAt);
  if (Number.isNaN(ms)) throw new RangeError(`takenAt must be an ISO time: ${takenAt}`);
  return ms;
}

/** Readings as logs, with the effects that they share. */
interface Swabs {
  readonly list: readonly { readonly log: number; readonly bound: Bound; readonly ms: number; readonly effects: readonly number[] }[];
  readonly noiseSd: number;
  readonly effectVariances: readonly number[];
}

function toSwabs(counted: readonly SeriesReading[], meter: Meter, noise: MeterNoise): Swabs {
  const effectVariances: number[] = [];
  const indexOf = new Map<string, number>();
  const effectOf = (part: 'operator' | 'lot', level: string | null | undefined, i: number): number[] => {
    const { variance } = noise[part];
    if (variance === null) return [];
    const key = `${part} ${level ?? `unknown ${i}`}`;
    const known = indexOf.get(key) ?? effectVariances.push(variance) - 1;
    indexOf.set(key, known);
    return [known];
  };
  const list = counted.map((reading, i) => ({
    // A display of 0 means below 1.
    log: Math.log(Math.max(1, reading.rlu ?? 1)),
    bound: boundOnMeter(reading.rlu ?? 0, reading.bound, meter),
    ms: msOf(reading),
    effects: [...effectOf('operator', reading.operator, i), ...effectOf('lot', reading.lotId, i)],
  }));
  return { list, noiseSd: Math.sqrt(sumOfParts(noise, ['repeatability', 'withinPerson'])), effectVariances };
}

function fitLine({ list, noiseSd, effectVariances }: Swabs, fixedOf: (ms: number) => readonly number[]): KnownNoiseFit | undefined {
  const values = list.map(({ log, bound, ms, effects }): NoisyValue => ({ value: log, bound, fixed: fixedOf(ms), effects }));
  const got = knownNoiseFit({ values, noiseSd, effectVariances });
  return got.ok ? got.value : undefined;
}

function meanOf(swabs: Swabs): PersonSeries['mean'] {
  const { list } = swabs;
  if (list.length === 0) return { ok: false, reason: 'none-counted' };
  const has = (bound: Bound) => list.some((swab) => swab.bound === bound);
  if (!has('exact') && !has('at-least')) return { ok: false, reason: 'all-at-most' };
  if (!has('exact') && !has('at-most')) return { ok: false, reason: 'all-at-least' };
  const got = fitLine(swabs, () => [1]);
  if (got === undefined) throw new Error('a mean with values on both sides is determined');
  const mean = got.coefficients[0] ?? Number.NaN;
  const reach = Z_95 * Math.sqrt(got.covariance[0]?.[0] ?? Number.NaN);
  return { ok: true, value: { rlu: Math.exp(mean), lowRlu: Math.exp(mean - reach), highRlu: Math.exp(mean + reach) } };
}

function trendOf(swabs: Swabs, z: number): PersonSeries['trend'] {
  const { list } = swabs;
  if (list.length < FEWEST_FOR_TREND) return { ok: false, reason: 'too-few' };
  const exact = list.filter(({ bound }) => bound === 'exact');
  // Two numbers at two times hold a line; bounds alone may let it turn without end.
  if (new Set(exact.map(({ ms }) => ms)).size < 2) return { ok: false, reason: 'too-few-exact' };
  const [from, to] = [Math.min(...list.map(({ ms }) => ms)), Math.max(...list.map(({ ms }) => ms))];
  // From -1/2 at the first to 1/2 at the last, so that the slope is the change over the whole time.
  const at = (ms: number) => [1, (ms - (from + to) / 2) / (to - from)] as const;
  const got = fitLine(swabs, at);
  if (got === undefined) return { ok: false, reason: 'too-few-exact' };
  const [middle = Number.NaN, slope = Number.NaN] = got.coefficients;
  const [[mm = Number.NaN, ms = Number.NaN] = [], [, ss = Number.NaN] = []] = got.covariance;
  const reach = z * Math.sqrt(ss);
  const band = Array.from({ length: BAND_POINTS }, (_, i) => {
    const atMs = from + ((to - from) * i) / (BAND_POINTS - 1);
    const [, x] = at(atMs);
    const [log, sd] = [middle + slope * x, Math.sqrt(mm + 2 * ms * x + ss * x * x)];
    return { atMs, rlu: Math.exp(log), lowRlu: Math.exp(log - Z_95 * sd), highRlu: Math.exp(log + Z_95 * sd) };
  });
  return {
    ok: true,
    value: {
      days: Math.round((to - from) / DAY_MS),
      change: { fraction: Math.expm1(slope), low: Math.expm1(slope - reach), high: Math.expm1(slope + reach) },
      perMonthFraction: Math.expm1((slope * MONTH_MS) / (to - from)),
      verdict: slope > reach ? 'rise' : slope < -reach ? 'fall' : 'within-noise',
      band,
      moreThanNoise: exact.length < list.length ? null : chiSquareTail(got.chiSquare, list.length - 2) < RARE_SPREAD,
    },
  };
}
