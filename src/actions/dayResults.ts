import { setImmediate } from 'node:timers/promises';
import { content } from '../content/allContent.ts';
import { acidLines, findAcidSide } from '../core/plaque/day/acidLines.ts';
import { bandOf, type DaySamples, joinSamples, sampleDay } from '../core/plaque/day/dayBand.ts';
import { minutesByLine } from '../core/plaque/day/dayFigures.ts';
import { buildDayModel } from '../core/plaque/day/dayModel.ts';
import type { DayLanguage } from '../core/plaque/day/dayWords.ts';
import { drawModels } from '../core/plaque/day/drawModels.ts';
import { eventCosts } from '../core/plaque/day/eventCosts.ts';
import { runDay } from '../core/plaque/day/runDay.ts';
import { type SaidDay, sayDays } from '../core/plaque/day/sayDays.ts';
import type { AcidDay } from '../core/plaque/day/types.ts';
import { seededUniform } from '../core/stats/seededUniform.ts';
import type { DayRecord, DaysRecord } from '../core/visit/dayRecord.ts';
import { hideAlcohol } from '../core/visit/hideAlcohol.ts';
import { mouthOfVisit } from '../core/visit/mouthOfVisit.ts';
import { dayDifference, sayDayChange } from '../core/visit/sayDayChange.ts';
import type { VisitInput } from '../core/visit/types.ts';
import type { ClosingResult } from './closeVisit.ts';

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
  const told = acidDay.changed && worked[acidDay.changed.of];
  const changed = acidDay.changed && (await workOutDay(acidDay.changed.day, input));
  const sentence = sayInBoth(worked);
  const openSentence = sayInBoth(worked.map(hideIn));
  const body: DaysRecord = {
    sentence,
    ...((openSentence.en !== sentence.en || openSentence.es !== sentence.es) && { openSentence }),
    days: worked.map(recordOf),
    ...(changed && { changed: { ...recordOf(changed), ...(told && { sentence: sayChange(told, changed) }) } }),
    draws: DRAWS,
    seed: SEED,
  };
  const { versions } = content;
  return [{ kind: 'day', inputDigest, body, codeVersion: versions.code, contentVersion: versions.content }];
}

interface WorkedDay extends Pick<DayRecord, 'below'> {
  readonly said: SaidDay;
  /** On the acid side, by one draw after the other. */
  readonly minutes: Float64Array;
}

const sayIn = (days: readonly WorkedDay[], language: DayLanguage): string =>
  sayDays(
    days.map(({ said }) => said),
    content.acidDay.tables.foods,
    language,
    content.acidDay.eventNames,
  );

const sayInBoth = (days: readonly WorkedDay[]): DaysRecord['sentence'] => ({ en: sayIn(days, 'en'), es: sayIn(days, 'es') });

/** As it may be read where private matters are hidden. */
const hideIn = (worked: WorkedDay): WorkedDay => ({
  ...worked,
  said: { ...worked.said, day: hideAlcohol(worked.said.day, { foods: content.acidDay.tables.foods }) },
});

const sayChange = (told: WorkedDay, changed: WorkedDay): string =>
  sayDayChange(told.said, changed.said, dayDifference(told.minutes, changed.minutes));

function recordOf(worked: WorkedDay): DayRecord {
  const headline = sayIn([worked], 'en');
  const openHeadline = sayIn([hideIn(worked)], 'en');
  return { headline, ...(openHeadline !== headline && { openHeadline }), below: worked.below };
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
  const samples = joinSamples(parts);
  const { minutesBelow, atRest } = bandOf(samples);
  const minutes = minutesByLine(curve, lines);
  const { id, ph } = findAcidSide(lines);
  const costs = eventCosts(day, { curve, model, foods, linePh: ph });
  return {
    said: { day, minutes: minutes[id], band: minutesBelow[id], atRest, costs },
    below: Object.fromEntries(lines.map((line) => [line.id, { ph: line.ph, minutes: minutes[line.id], ...minutesBelow[line.id] }])),
    minutes: samples.minutesBelow[id],
  };
}
