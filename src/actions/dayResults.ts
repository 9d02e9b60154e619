import { setImmediate } from 'node:timers/promises';
import { content } from '../content/allContent.ts';
import { acidLines, findAcidSide } from '../core/plaque/day/acidLines.ts';
import { bandOf, type DaySamples, type Interval, joinSamples, sampleDay } from '../core/plaque/day/dayBand.ts';
import { minutesByLine } from '../core/plaque/day/dayFigures.ts';
import { buildDayModel } from '../core/plaque/day/dayModel.ts';
import type { DayLanguage } from '../core/plaque/day/dayWords.ts';
import { drawModels } from '../core/plaque/day/drawModels.ts';
import { eventCosts } from '../core/plaque/day/eventCosts.ts';
import { runDay } from '../core/plaque/day/runDay.ts';
import { type SaidDay, sayDays } from '../core/plaque/day/sayDays.ts';
import type { AcidDay } from '../core/plaque/day/types.ts';
import { seededUniform } from '../core/stats/seededUniform.ts';
import { mouthOfVisit } from '../core/visit/mouthOfVisit.ts';
import type { VisitInput } from '../core/visit/types.ts';
import type { ClosingResult } from './closeVisit.ts';

/** What was said of one described day when its visit closed. */
export interface DayRecord {
  readonly headline: string;
  /** Minutes below each line: by the usual values, and the band. */
  readonly below: Readonly<Record<string, Interval & { readonly ph: number; readonly minutes: number }>>;
}

/** As the result of kind `day` keeps it. */
export interface DaysRecord {
  /** Over all days that were told, as a professional and as the person may read it. */
  readonly sentence: Readonly<Record<DayLanguage, string>>;
  readonly days: readonly DayRecord[];
  readonly changed?: DayRecord | undefined;
  readonly draws: number;
  readonly seed: number;
}

/** The same draws as the page takes, so that both say the same. */
const DRAWS = 40;
const SEED = 1;

/**
 * The result of the described days for the record, computed here and not taken from the page. It gives the server back after each run of
 * the model, since forty of them take about a second.
 * @returns none where no day was told
 */
export async function listDayResults(input: VisitInput, inputDigest: string): Promise<ClosingResult[]> {
  const { acidDay } = input.visit;
  if (!acidDay) return [];
  const worked: WorkedDay[] = [];
  for (const day of acidDay.days) worked.push(await workOutDay(day, input));
  const changed = acidDay.changed && (await workOutDay(acidDay.changed.day, input));
  const sayIn = (days: readonly WorkedDay[], language: DayLanguage) =>
    sayDays(
      days.map(({ said }) => said),
      content.acidDay.tables.foods,
      language,
      content.acidDay.eventNames,
    );
  const recordOf = (day: WorkedDay): DayRecord => ({ headline: sayIn([day], 'en'), below: day.below });
  const body: DaysRecord = {
    sentence: { en: sayIn(worked, 'en'), es: sayIn(worked, 'es') },
    days: worked.map(recordOf),
    ...(changed && { changed: recordOf(changed) }),
    draws: DRAWS,
    seed: SEED,
  };
  const { versions } = content;
  return [{ kind: 'day', inputDigest, body, codeVersion: versions.code, contentVersion: versions.content }];
}

interface WorkedDay extends Pick<DayRecord, 'below'> {
  readonly said: SaidDay;
}

async function workOutDay(day: AcidDay, { visit }: VisitInput): Promise<WorkedDay> {
  const { tables, mouths } = content.acidDay;
  const { foods } = tables;
  const { mouth, measured } = mouthOfVisit(visit, mouths, content.questions);
  const lines = acidLines(tables, measured);
  const model = buildDayModel(mouth, tables);
  const curve = runDay(day, model, foods);
  const parts: DaySamples[] = [];
  for (const drawn of drawModels(mouth, tables, DRAWS, seededUniform(SEED))) {
    parts.push(sampleDay(day, [drawn], { foods, lines }));
    await setImmediate();
  }
  const { minutesBelow, atRest } = bandOf(joinSamples(parts));
  const minutes = minutesByLine(curve, lines);
  const { id, ph } = findAcidSide(lines);
  const costs = eventCosts(day, { curve, model, foods, linePh: ph });
  return {
    said: { day, minutes: minutes[id], band: minutesBelow[id], atRest, costs },
    below: Object.fromEntries(lines.map((line) => [line.id, { ph: line.ph, minutes: minutes[line.id], ...minutesBelow[line.id] }])),
  };
}
