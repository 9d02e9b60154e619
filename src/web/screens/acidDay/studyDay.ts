import { dayTables } from '../../../content/plaque/dayTables.ts';
import { acidLines, findAcidSide, type MeasuredFluids } from '../../../core/plaque/day/acidLines.ts';
import { type ChangeGain, changeGains } from '../../../core/plaque/day/changeGains.ts';
import {
  bandOf,
  type DayBand,
  type DaySamples,
  type Interval,
  intervalOf,
  joinSamples,
  sampleDay,
} from '../../../core/plaque/day/dayBand.ts';
import type { DayLimits } from '../../../core/plaque/day/dayLimits.ts';
import { buildDayModel, type DayModel } from '../../../core/plaque/day/dayModel.ts';
import { drawModels } from '../../../core/plaque/day/drawModels.ts';
import { type EventCost, eventCosts } from '../../../core/plaque/day/eventCosts.ts';
import { runDay } from '../../../core/plaque/day/runDay.ts';
import { searchChanges } from '../../../core/plaque/day/searchChanges.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { Mouth } from '../../../core/plaque/types.ts';
import { seededUniform } from '../../../core/stats/seededUniform.ts';

export interface StudyQuestion {
  readonly told: AcidDay;
  readonly changed: AcidDay | null;
  readonly mouth: Mouth;
  readonly measured: MeasuredFluids;
  /** Null: no change is looked for. */
  readonly limits: DayLimits | null;
}

/** What takes longer than a drag may wait: each part is handed over when it is there. */
export interface DayStudy {
  readonly costs: readonly EventCost[];
  readonly bandTold: DayBand;
  readonly bandChanged: DayBand | null;
  /** Minutes by which the changed day has fewer on the acid side; null while some of the draws see no difference. */
  readonly fewer: Interval | null;
  /** The same the other way round: the changed day has clearly more. */
  readonly more: Interval | null;
  /** Single moves, best first. */
  readonly gains: readonly ChangeGain[];
}

/** The same draws for every day and every page, so that two looks at one day say the same. */
export const BAND_DRAWS = 40;
const GAIN_DRAWS = 24;
const BAND_SEED = 1;
/** Of the single moves, how many get a band of their own. */
const GAINS_WITH_BAND = 4;

/** Gives control back after each run of the model, so that the worker can turn to another question. */
export function* studyDay({ told, changed, mouth, measured, limits }: StudyQuestion): Generator<Partial<DayStudy>, void> {
  const { foods } = dayTables;
  const lines = acidLines(dayTables, measured);
  const linePh = findAcidSide(lines).ph;
  const model = buildDayModel(mouth, dayTables);
  const models = drawModels(mouth, dayTables, BAND_DRAWS, seededUniform(BAND_SEED));
  yield { costs: eventCosts(told, { curve: runDay(told, model, foods), model, foods, linePh }) };

  const ofTold = yield* drawAll(told);
  yield { bandTold: bandOf(ofTold) };
  if (changed) {
    const ofChanged = yield* drawAll(changed);
    const differences = ofTold.minutesBelow.saliva.map((minutes, i) => minutes - (ofChanged.minutesBelow.saliva[i] ?? Number.NaN));
    yield { bandChanged: bandOf(ofChanged), ...sideOf(differences) };
  }
  if (!limits) return;
  const search = searchChanges(told, { model, foods, limits, linePh, most: 1 });
  let step = search.next();
  while (!step.done) {
    yield {};
    step = search.next();
  }
  const { ones } = step.value;
  const gains: ChangeGain[] = ones.map(({ moves }, i) => ({ moves, rank: i + 1, isAsked: false }));
  yield { gains };
  for (let i = 0; i < Math.min(ones.length, GAINS_WITH_BAND); i += 1) {
    const [gain] = changeGains(told, ones.slice(i, i + 1), { models: models.slice(0, GAIN_DRAWS), foods, linePh });
    if (gain) gains[i] = { ...gain, rank: i + 1 };
    yield { gains: [...gains] };
  }

  function* drawAll(day: AcidDay): Generator<Partial<DayStudy>, DaySamples> {
    const parts: DaySamples[] = [];
    for (const one of models) {
      parts.push(sampleDay(day, [one] satisfies readonly DayModel[], { foods, lines }));
      yield {};
    }
    return joinSamples(parts);
  }
}

function sideOf(differences: Float64Array): Pick<DayStudy, 'fewer' | 'more'> {
  const { low, high } = intervalOf(differences);
  return { fewer: low > 0 ? { low, high } : null, more: high < 0 ? { low: -high, high: -low } : null };
}
