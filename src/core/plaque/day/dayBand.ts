// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop

import { minutesBelow } from '../model/readCurve.ts';
import type { SimulationOptions } from '../types.ts';
import { type AcidLine, type AcidLineId, findAcidSide } from './acidLines.ts';
import { minutesByLine } from './dayFigures.ts';
import type { DayModel } from './dayModel.ts';
import { DAY_MINUTES } from './nightSpans.ts';
import { awakeMinutesBelow, type RestBand, restDay } from './restDay.ts';
import { runDay } from './runDay.ts';
import type { AcidDay, Food } from './types.ts';

export const BAND_LEVEL = 0.95;
/** Looser than for the curve itself: the draws differ by far more than this. */
export const BAND_TOLERANCE_PH = 0.02;

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** What draws of the model give for one day, in the order of the draws: plain arrays, so that a worker can hand over its share. */
export interface DaySamples {
  readonly count: number;
  /** Draws one after another, 1,441 values each. */
  readonly ph: Float64Array;
  readonly minutesBelow: Readonly<Record<AcidLineId, Float64Array>>;
  /** By the same draws: minutes on the acid side of the same day with nothing eaten, those of them awake, and what food adds. */
  readonly atRest: Readonly<Record<keyof RestBand, Float64Array>>;
}

/** How far the less certain numbers move the curve and the minutes: 95 in 100 draws lie within. */
export interface DayBand {
  readonly samples: number;
  readonly lowPh: Float64Array;
  readonly highPh: Float64Array;
  readonly minutesBelow: Readonly<Record<AcidLineId, Interval>>;
  readonly atRest: RestBand;
}

/** Works a day out by each of the drawn models. */
export function sampleDay(day: AcidDay, models: readonly DayModel[], { foods, lines, options }: SampleContext): DaySamples {
  const ph = new Float64Array(models.length * (DAY_MINUTES + 1));
  const below = Object.fromEntries(lines.map(({ id }) => [id, new Float64Array(models.length)])) as Record<AcidLineId, Float64Array>;
  const side = findAcidSide(lines);
  const resting = restDay(day);
  const atRest = eachOfRest(() => new Float64Array(models.length));
  models.forEach((model, i) => {
    const curve = runDay(day, model, foods, { tolerancePh: BAND_TOLERANCE_PH, ...options });
    ph.set(curve.ph, i * (DAY_MINUTES + 1));
    const minutes = minutesByLine(curve, lines);
    for (const { id } of lines) below[id][i] = minutes[id];
    const rest = runDay(resting, model, foods, { tolerancePh: BAND_TOLERANCE_PH, ...options, previous: curve });
    atRest.minutes[i] = minutesBelow(rest, side.ph);
    atRest.awakeMinutes[i] = awakeMinutesBelow(rest, day, side.ph);
    atRest.addedByFood[i] = minutes[side.id] - atRest.minutes[i]!;
  });
  return { count: models.length, ph, minutesBelow: below, atRest };
}

const eachOfRest = <T>(make: (of: keyof RestBand) => T): Readonly<Record<keyof RestBand, T>> => ({
  minutes: make('minutes'),
  awakeMinutes: make('awakeMinutes'),
  addedByFood: make('addedByFood'),
});

export interface SampleContext {
  readonly foods: ReadonlyMap<string, Food>;
  readonly lines: readonly AcidLine[];
  readonly options?: Omit<SimulationOptions, 'previous'> | undefined;
}

/** Shares of the draws, as workers hand them in, one after another. @throws RangeError without any */
export function joinSamples(parts: readonly DaySamples[]): DaySamples {
  const [first] = parts;
  if (!first) throw new RangeError('parts must not be empty');
  const ids = Object.keys(first.minutesBelow) as AcidLineId[];
  return {
    count: parts.reduce((sum, { count }) => sum + count, 0),
    ph: joinArrays(parts.map(({ ph }) => ph)),
    minutesBelow: Object.fromEntries(ids.map((id) => [id, joinArrays(parts.map((part) => part.minutesBelow[id]))])) as Record<
      AcidLineId,
      Float64Array
    >,
    atRest: eachOfRest((of) => joinArrays(parts.map(({ atRest }) => atRest[of]))),
  };
}

function joinArrays(arrays: readonly Float64Array[]): Float64Array {
  const joined = new Float64Array(arrays.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const array of arrays) {
    joined.set(array, at);
    at += array.length;
  }
  return joined;
}

/** The band of the draws, minute by minute, and of each count of minutes (quantile type 7). */
export function bandOf({ count, ph, minutesBelow, atRest }: DaySamples): DayBand {
  const width = DAY_MINUTES + 1;
  const lowPh = new Float64Array(width);
  const highPh = new Float64Array(width);
  const column = new Float64Array(count);
  for (let minute = 0; minute < width; minute += 1) {
    for (let i = 0; i < count; i += 1) column[i] = ph[i * width + minute]!;
    const { low, high } = intervalOf(column);
    lowPh[minute] = low;
    highPh[minute] = high;
  }
  const ids = Object.keys(minutesBelow) as AcidLineId[];
  return {
    samples: count,
    lowPh,
    highPh,
    minutesBelow: Object.fromEntries(ids.map((id) => [id, intervalOf(minutesBelow[id])])) as Record<AcidLineId, Interval>,
    atRest: eachOfRest((of) => intervalOf(atRest[of])),
  };
}

/** Between the 2.5th and the 97.5th of 100, each linear between the two nearest values. */
export function intervalOf(values: Float64Array): Interval {
  const sorted = Float64Array.from(values).sort();
  const tail = (1 - BAND_LEVEL) / 2;
  return { low: quantile(sorted, tail), high: quantile(sorted, 1 - tail) };
}

function quantile(sorted: Float64Array, share: number): number {
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const above = Math.ceil(place);
  return sorted[below]! + (sorted[above]! - sorted[below]!) * (place - below);
}
