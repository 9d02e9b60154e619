import type { ControlSpan } from '../checks/controlSpan.ts';
import { keepByTable } from '../keep/keepByTable.ts';
import type { SourceRef } from '../visit/answer.ts';
import { noiseOfMeter } from './blendNoise.ts';
import { boundOnMeter } from './boundOnMeter.ts';
import { numberProblems } from './checkReading.ts';
import { compareWithPast, type DatedPast } from './compareWithPast.ts';
import { interpretLogReading } from './interpretReading.ts';
import { readingSdLog } from './noiseSums.ts';
import type { NoiseTable } from './noiseTable.ts';
import { parseTakenAt, type TakenAt } from './parseTakenAt.ts';
import { evaluateConditions } from './readingConditions.ts';
import * as say from './readingSentences.ts';
import { sayRlu } from './sayRlu.ts';
import type {
  Bound,
  ConditionResult,
  Meter,
  PastReading,
  ReadingAssessment,
  ReadingState,
  StudySwab,
  SwabCondition,
  SwabLot,
  SwabReading,
} from './types.ts';

export interface AssessReadingInput {
  readonly reading?: SwabReading | undefined;
  /** Without a meter there is no cut-off and no verdict. */
  readonly meter?: Meter | undefined;
  readonly lots: readonly SwabLot[];
  /** Earlier swabs of the same person, any order, this one not among them. */
  readonly pastReadings: readonly PastReading[];
  /** Swabs of the same person for studies: they count for the hours between two swabs and for nothing else. */
  readonly studySwabs?: readonly StudySwab[] | undefined;
  /** ISO local date of the visit. */
  readonly onDate: string;
  readonly conditions: readonly SwabCondition[];
  /** What is taken of noise that the practice has not measured, and how it is blended with what it has. */
  readonly noise: NoiseTable;
  /** IANA name of the practice's zone; a time in UTC is shown in it. */
  readonly timeZone?: string | undefined;
  /** How the controls of the meters and lots stood over the day; absent = not known. */
  readonly controls?: readonly ControlSpan[] | undefined;
}

const METHOD_SOURCES: readonly SourceRef[] = [
  { key: 'jcgm106', status: 'memory', note: 'limits of the verdict and chance, on the log scale' },
  { key: 'gelman-bda3', status: 'memory', note: 'blend of assumed noise with own studies' },
  { key: 'common-practice', status: 'common-practice', note: 'what the swab reacts to and what it is for' },
];
const CHANGE_SOURCES: readonly SourceRef[] = [
  ...METHOD_SOURCES,
  { key: 'fokkema2006', status: 'memory', note: 'limits of change on the log scale' },
  { key: 'sidak1967', status: 'memory', note: 'limits of change looked at again at each visit' },
];
const NO_SOURCES: readonly SourceRef[] = [];

/**
 * One swab reading of one person as the screen and the record use it: conditions, verdict by the guard band of one reading at 5 %,
 * change since the last counted reading on the same meter, and the sentences to show beside the number.
 * A condition that fails as `not-counted` makes the reading void: the number stays on the record and decides nothing.
 * @returns `counted` only for a valid or flagged number on a known meter; without a number no verdict, and the visit is complete
 * @throws RangeError naming the field: a number that is not finite, negative or outside the meter's range (see `checkReading`), a time
 *         without zone, a condition without its check
 */
export function assessReading(input: AssessReadingInput): ReadingAssessment {
  const { reading, meter, lots, onDate, timeZone } = input;
  if (reading === undefined || reading.notTaken !== undefined)
    return withoutNumber('not-taken', say.sayNotTaken(reading?.notTaken), ...say.sayNotTakenNote(reading?.notTakenNote));
  const problem = numberProblems(reading, meter)[0];
  if (problem !== undefined) throw new RangeError(`reading.${problem.field}: ${problem.message}`);

  if (reading.activatedAt !== undefined) requireTime(reading.activatedAt, 'reading.activatedAt', timeZone);
  const taken = reading.takenAt === undefined ? undefined : requireTime(reading.takenAt, 'reading.takenAt', timeZone);
  const pasts = input.pastReadings.map((past, i) => ({
    reading: past,
    at: requireTime(past.takenAt, `pastReadings.${i}.takenAt`, timeZone),
  }));
  const forStudies = (input.studySwabs ?? []).map(({ takenAt }, i) => requireTime(takenAt, `studySwabs.${i}.takenAt`, timeZone));
  const past = [...pasts.map((p) => p.at), ...forStudies];
  const conditions = evaluateConditions(
    { reading, taken, meter, lots, past, onDate, controls: input.controls, timeZone },
    input.conditions,
  );
  const found = sortOut(input.conditions, conditions);
  const withOwn = withConditionSources(input.conditions);

  if (reading.failed === true) {
    return { ...withoutNumber('failed', 'Swab failed: no number.', say.FAILED_IS_NO_SWAB), conditions, sources: withOwn(NO_SOURCES) };
  }
  if (reading.rlu === undefined) {
    const warning = found.voiding.length > 0 ? [`A number would not be counted: ${found.voiding.map((c) => c.says).join('; ')}.`] : [];
    return { ...withoutNumber('not-taken', 'No number yet.', ...warning), conditions, sources: withOwn(NO_SOURCES) };
  }
  const number = { rlu: reading.rlu, bound: boundOnMeter(reading.rlu, reading.bound, meter) };
  const swab: NumberedSwab = { ...number, reading, taken, pasts, onDate, found, table: input.noise };
  const assessed = found.voiding.length > 0 ? voidReading(swab) : meter === undefined ? unnamedMeter(swab) : countedReading(swab, meter);
  return { ...assessed, ...number, conditions, sources: withOwn(assessed.sources) };
}

function requireTime(iso: string, name: string, timeZone: string | undefined): TakenAt {
  const taken = parseTakenAt(iso, timeZone);
  if (taken === undefined) throw new RangeError(`${name} must be a time with its zone, like 2026-11-25T10:36:00+01:00: ${iso}`);
  return taken;
}

/** Conditions that make the reading void, and those that only ask for caution. */
interface Found {
  readonly voiding: readonly ConditionResult[];
  readonly cautions: readonly ConditionResult[];
  readonly mentions: readonly ConditionResult[];
}

function sortOut(table: readonly SwabCondition[], results: readonly ConditionResult[]): Found {
  const effect = (result: ConditionResult, i: number) => (result.state === 'met' ? 'none' : (result.effect ?? table[i]?.[result.state]));
  const having = (wanted: string) => results.filter((result, i) => effect(result, i) === wanted);
  return { voiding: having('not-counted'), cautions: having('flag'), mentions: having('say') };
}

interface NumberedSwab {
  readonly rlu: number;
  readonly bound: Bound;
  readonly reading: SwabReading;
  readonly taken: TakenAt | undefined;
  readonly pasts: readonly DatedPast[];
  readonly onDate: string;
  readonly found: Found;
  readonly table: NoiseTable;
}

function withoutNumber(state: ReadingState, headline: string, ...sentences: readonly string[]): ReadingAssessment {
  return { state, counted: false, conditions: [], headline, sentences: [...sentences, say.COMPLETE_WITHOUT], sources: [] };
}

function voidReading({ rlu, bound, reading, found }: NumberedSwab): ReadingAssessment {
  const kept = `The number, ${sayRlu(rlu, bound)}, stays on the record and decides nothing.`;
  return {
    state: 'void',
    counted: false,
    conditions: [],
    headline: say.sayNotCounted(found.voiding),
    sentences: [kept, say.DECIDE_TODAY, ...say.sayPurpose(reading)],
    sources: METHOD_SOURCES,
  };
}

function unnamedMeter({ rlu, bound, reading, found }: NumberedSwab): ReadingAssessment {
  return {
    state: 'flagged',
    counted: false,
    conditions: [],
    headline: `${sayRlu(rlu, bound)}. No verdict: the meter is not named.`,
    sentences: [...notes(found), 'Each meter has its own scale and cut-off.', say.DECIDE_TODAY, ...say.sayPurpose(reading)],
    sources: METHOD_SOURCES,
  };
}

function countedReading({ rlu, bound, reading, taken, pasts, onDate, found, table }: NumberedSwab, meter: Meter): ReadingAssessment {
  const sdLogSingle = readingSdLog(noiseOfMeter(table, meter));
  const read = interpretLogReading({ readingRlu: rlu, bound, cutoffRlu: meter.cutoffRlu, sdLogSingle });
  // Without a time, only readings from before the day of the visit, wherever that day began.
  const latestMs = taken?.instantMs ?? Date.parse(`${onDate}T00:00:00+14:00`);
  const compared = { rlu, bound, operator: reading.operator?.name, lotId: reading.lotId };
  const comparison = compareWithPast(compared, { meter, table }, pasts, latestMs);
  return {
    state: found.cautions.length > 0 ? 'flagged' : 'valid',
    counted: true,
    conditions: [],
    verdict: read.verdict ?? undefined,
    interval: read.intervalRlu ? { lowRlu: read.intervalRlu.low, highRlu: read.intervalRlu.high } : undefined,
    probabilityAbove: read.probabilityAbove ?? undefined,
    settleChance: read.settleChance ?? undefined,
    daysToDecide: read.daysToDecide,
    change: comparison.kind === 'compared' ? comparison.change : undefined,
    headline: say.sayVerdict(rlu, bound, read.verdict),
    sentences: [
      ...say.saySettling(read),
      ...say.sayChance(read.probabilityAbove, taken, { meter, table }),
      ...say.sayChange(comparison, { meter, table }),
      ...notes(found),
      ...say.sayPurpose(reading),
    ],
    sources: comparison.kind === 'compared' ? CHANGE_SOURCES : METHOD_SOURCES,
  };
}

/** Cautions and what was not noted, or nothing. */
function notes({ cautions, mentions }: Found): string[] {
  const notNoted = mentions.length === 0 ? undefined : `Also: ${mentions.map((c) => c.says).join('; ')}.`;
  return [say.sayCautions(cautions), notNoted].filter((s) => s !== undefined);
}

/** Sources of the method and of the conditions: one of three lists for each table of conditions. */
const withConditionSources = keepByTable((conditions: readonly SwabCondition[]) =>
  keepByTable((own: readonly SourceRef[]) => distinct([...own, ...conditions.map((c) => c.source)])),
);

const distinct = (sources: readonly SourceRef[]): SourceRef[] => [
  ...new Map(sources.map((s) => [`${s.key}|${s.status}|${s.note ?? ''}`, s])).values(),
];
