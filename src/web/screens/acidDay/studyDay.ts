import { dayTables } from '../../../content/plaque/dayTables.ts';
import { acidLines, findAcidSide, type MeasuredFluids } from '../../../core/plaque/day/acidLines.ts';
import { type ChangeGain, gainsOf } from '../../../core/plaque/day/changeGains.ts';
import { bandOf, type DayBand, type DaySamples, type Interval, joinSamples, sampleDay } from '../../../core/plaque/day/dayBand.ts';
import type { DayLimits } from '../../../core/plaque/day/dayLimits.ts';
import { buildDayModel, type DayModel } from '../../../core/plaque/day/dayModel.ts';
import { drawModels } from '../../../core/plaque/day/drawModels.ts';
import { type EventCost, eventCosts } from '../../../core/plaque/day/eventCosts.ts';
import { runDay } from '../../../core/plaque/day/runDay.ts';
import { type ChangeSearch, type DayChange, searchChanges } from '../../../core/plaque/day/searchChanges.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { minutesBelow } from '../../../core/plaque/model/readCurve.ts';
import type { Mouth } from '../../../core/plaque/types.ts';
import { seededUniform } from '../../../core/stats/seededUniform.ts';
import { dayDifference } from '../../../core/visit/sayDayChange.ts';

export interface StudyQuestion {
  readonly told: AcidDay;
  readonly changed: AcidDay | null;
  readonly mouth: Mouth;
  readonly measured: MeasuredFluids;
  /** Null: no change is looked for. */
  readonly limits: DayLimits | null;
  /** What was found for the day as told before: it is not looked for again. */
  readonly known?: Pick<DayStudy, 'gains' | 'together'> | undefined;
}

/** What takes longer than a drag may wait: each part is handed over when it is there. */
export interface DayStudy {
  readonly costs: readonly EventCost[];
  /** On the acid side, of the day as told, by the usual values. */
  readonly minutesTold: number;
  readonly bandTold: DayBand;
  readonly bandChanged: DayBand | null;
  /** Minutes by which the changed day has fewer on the acid side; null while some of the draws see no difference. */
  readonly fewer: Interval | null;
  /** The same the other way round: the changed day has clearly more. */
  readonly more: Interval | null;
  /** Single moves, best first. */
  readonly gains: readonly ChangeGain[];
  /** Two and three moves together, each only where it leaves clearly less than fewer moves do. */
  readonly together: readonly TogetherGain[];
}

export interface TogetherGain {
  readonly gain: ChangeGain;
  /** Which pairs were tried; of three moves, the best pair was widened and its moves exchanged. */
  readonly found: ChangeSearch['twosOf'] | 'widened';
}

/** The same draws for every day and every page, so that two looks at one day say the same. */
export const BAND_DRAWS = 40;
const GAIN_DRAWS = 24;
const BAND_SEED = 1;
/** Of the single moves, how many get a band of their own. */
export const GAINS_WITH_BAND = 4;
/** Minutes by the usual values that one more change must save, to be worth a line. */
const LEAST_HELP_MINUTES = 5;

/** Gives control back after each run of the model, so that the worker can turn to another question. */
export function* studyDay({ told, changed, mouth, measured, limits, known }: StudyQuestion): Generator<Partial<DayStudy>, void> {
  const { foods } = dayTables;
  const lines = acidLines(dayTables, measured);
  const linePh = findAcidSide(lines).ph;
  const model = buildDayModel(mouth, dayTables);
  const models = drawModels(mouth, dayTables, BAND_DRAWS, seededUniform(BAND_SEED));
  const curve = runDay(told, model, foods);
  yield { costs: eventCosts(told, { curve, model, foods, linePh }), minutesTold: minutesBelow(curve, linePh) };

  const ofTold = yield* drawAll(told);
  yield { bandTold: bandOf(ofTold) };
  if (changed) {
    const ofChanged = yield* drawAll(changed);
    yield { bandChanged: bandOf(ofChanged), ...dayDifference(ofTold.minutesBelow.saliva, ofChanged.minutesBelow.saliva) };
  }
  if (known) yield known;
  if (!limits || known) return;
  const search = { model, foods, limits, linePh };
  const { ones } = yield* stepThrough(searchChanges(told, { ...search, most: 1 }));
  const gains: ChangeGain[] = ones.map(({ moves }, i) => ({ moves, rank: i + 1, isAsked: false }));
  yield { gains };
  const ask = gainsOf(told, { models: models.slice(0, GAIN_DRAWS), foods, linePh });
  for (let i = 0; i < Math.min(ones.length, GAINS_WITH_BAND); i += 1) {
    gains[i] = yield* stepThrough(ask(ones[i]?.moves ?? [], i + 1));
    yield { gains: [...gains] };
  }
  const { twos, twosOf, three } = yield* stepThrough(searchChanges(told, { ...search, most: 3 }));
  const together: TogetherGain[] = [];
  const [pair] = twos;
  if (pair && isBetter(pair, ones[0])) together.push({ found: twosOf, gain: yield* stepThrough(ask(pair.moves, 1)) });
  if (three && isBetter(three, pair)) together.push({ found: 'widened', gain: yield* stepThrough(ask(three.moves, 1)) });
  yield { together };

  function* drawAll(day: AcidDay): Generator<Partial<DayStudy>, DaySamples> {
    const parts: DaySamples[] = [];
    for (const one of models) {
      parts.push(sampleDay(day, [one] satisfies readonly DayModel[], { foods, lines }));
      yield {};
    }
    return joinSamples(parts);
  }
}

const isBetter = (change: DayChange, fewer: DayChange | undefined): boolean =>
  fewer !== undefined && change.minutes < fewer.minutes - LEAST_HELP_MINUTES;

/** One run of the model after another, with nothing new to hand over in between. */
function* stepThrough<R>(steps: Generator<unknown, R>): Generator<Partial<DayStudy>, R> {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    yield {};
  }
}
