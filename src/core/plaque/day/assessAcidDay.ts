import type { RegimenTables } from '../../regimen/tables.ts';
import type { Jurisdiction, PersonFacts } from '../../regimen/types.ts';
import { seededUniform } from '../../stats/seededUniform.ts';
import { minutesBelow } from '../model/readCurve.ts';
import type { DayCurve, Mouth } from '../types.ts';
import { type AcidLine, acidLines, findAcidSide, type MeasuredFluids } from './acidLines.ts';
import { type ChangeGain, changeGains } from './changeGains.ts';
import { bandOf, type DayBand, sampleDay } from './dayBand.ts';
import { acidArea, type EventTrace, traceEvents } from './dayFigures.ts';
import { type DayLimits, dayLimits } from './dayLimits.ts';
import { buildDayModel, type DayTables } from './dayModel.ts';
import type { DayMoveKind } from './dayMoves.ts';
import { drawModels } from './drawModels.ts';
import { type EventCost, eventCosts } from './eventCosts.ts';
import { listNotCounted } from './listNotCounted.ts';
import { type MineralIndex, mineralIndex } from './mineralIndex.ts';
import { runDay } from './runDay.ts';
import { type DaySentences, sayDay } from './sayDay.ts';
import { finish, searchChanges } from './searchChanges.ts';
import type { AcidDay } from './types.ts';

export interface AcidDayInput {
  readonly day: AcidDay;
  readonly mouth: Mouth;
  readonly measured?: MeasuredFluids | undefined;
  /** Absent: no suggestion is made, since nothing is known against which it would have to be held. */
  readonly person?: PersonFacts | undefined;
  readonly jurisdiction?: Jurisdiction | undefined;
  readonly unwanted?: readonly DayMoveKind[] | undefined;
  /** Draws for the band, and for the band of a difference. */
  readonly samples: number;
  readonly gainSamples: number;
  /** Of the stream of draws: the same seed gives the same band. */
  readonly seed: number;
  /** Most moves in one suggestion; 0 = none are looked for. */
  readonly mostMoves: 0 | 1 | 2 | 3;
}

export interface AcidDayTables {
  readonly day: DayTables;
  readonly regimen: RegimenTables;
}

/** Minutes under one line, by the usual values and within the band. */
export interface MinutesUnder {
  readonly line: AcidLine;
  readonly minutes: number;
  readonly low: number;
  readonly high: number;
}

export interface AcidDayResult {
  readonly curve: DayCurve;
  readonly band: DayBand;
  readonly minutesBelow: readonly MinutesUnder[];
  /** The line that the headline counts under. */
  readonly acidSide: AcidLine;
  readonly acidArea: number;
  readonly mineral: MineralIndex;
  /** The same with fluoride in solution counted as holding the loss above saturation with fluorapatite. */
  readonly mineralWithFluoride: MineralIndex;
  readonly events: readonly EventTrace[];
  readonly costs: readonly EventCost[];
  readonly limits: DayLimits;
  /** Single moves, best first. */
  readonly gains: readonly ChangeGain[];
  /** Two and three moves together, best of each number, and how they were found. */
  readonly together: readonly (ChangeGain & { readonly found: (typeof FOUND)[keyof typeof FOUND] })[];
  readonly sentences: DaySentences;
  readonly notCounted: readonly string[];
}

const FOUND = {
  'every-pair': 'all pairs tried',
  'best-moves': 'all pairs of the best single moves tried',
  widened: 'best pair widened, each move exchanged again',
} as const;

/** Single moves of which the difference is worked out with its band; the others have their rank alone. */
const GAINS_WITH_BAND = 6;

/**
 * Everything about one described day, in one call: what the command line and the calculator answer with. The page does the same in parts.
 * @throws RangeError naming the field
 */
export function assessAcidDay(input: AcidDayInput, tables: AcidDayTables): AcidDayResult {
  const { day, mouth } = input;
  const { foods } = tables.day;
  const model = buildDayModel(mouth, tables.day);
  const curve = runDay(day, model, foods);
  const lines = acidLines(tables.day, input.measured);
  const acidSide = findAcidSide(lines);
  const models = drawModels(mouth, tables.day, Math.max(input.samples, input.gainSamples), seededUniform(input.seed));
  const band = bandOf(sampleDay(day, models.slice(0, input.samples), { foods, lines }));
  const costs = eventCosts(day, { curve, model, foods, linePh: acidSide.ph });
  const limits = dayLimits(input.person, tables.regimen, input.jurisdiction);
  const context = { models: models.slice(0, input.gainSamples), foods, linePh: acidSide.ph };
  const { mostMoves, unwanted } = input;
  const found =
    mostMoves === 0 ? undefined : finish(searchChanges(day, { model, foods, limits, unwanted, linePh: acidSide.ph, most: mostMoves }));
  const ones = found?.ones ?? [];
  const gains: ChangeGain[] = [
    ...changeGains(day, ones.slice(0, GAINS_WITH_BAND), context),
    ...ones.slice(GAINS_WITH_BAND).map(({ moves }, i) => ({ moves, rank: GAINS_WITH_BAND + i + 1, isAsked: false })),
  ];
  const minutes = minutesBelow(curve, acidSide.ph);
  return {
    curve,
    band,
    minutesBelow: lines.map((line) => ({ line, minutes: minutesBelow(curve, line.ph), ...band.minutesBelow[line.id] })),
    acidSide,
    acidArea: acidArea(curve),
    mineral: mineralIndex(curve, tables.day),
    mineralWithFluoride: mineralIndex(curve, tables.day, true),
    events: traceEvents(day, curve),
    costs,
    limits,
    gains,
    together: [
      ...changeGains(day, found?.twos.slice(0, 1) ?? [], context).map((gain) => ({
        ...gain,
        found: FOUND[found?.twosOf ?? 'every-pair'],
      })),
      ...changeGains(day, found?.three ? [found.three] : [], context).map((gain) => ({
        ...gain,
        found: FOUND.widened,
      })),
    ],
    sentences: sayDay({ day, foods, minutes, band: band.minutesBelow[acidSide.id], atRest: band.atRest, costs, gains }),
    notCounted: listNotCounted(day, foods),
  };
}
