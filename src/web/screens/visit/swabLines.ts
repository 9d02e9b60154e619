import { checkReading } from '../../../core/reading/checkReading.ts';
import { sayDuration, secondsToReading } from '../../../core/reading/secondsToReading.ts';
import type { Meter, NotTakenReason, SwabLot, SwabReading } from '../../../core/reading/types.ts';
import type { Choice } from '../../../core/visit/question.ts';
import { formatClock, formatNumber, formatShortClock } from '../../format.ts';
import type { Entry, Line, Reply } from './line.ts';

export interface SwabPlace {
  readonly reading: SwabReading;
  readonly lots: readonly SwabLot[];
  readonly members: readonly { readonly name: string; readonly trainedSwab: boolean }[];
  readonly onDate: string;
}

export const NOT_TAKEN: readonly (Choice & { readonly id: NotTakenReason })[] = [
  { id: 'declined', label: 'declined' },
  { id: 'no-site', label: 'no lower front teeth' },
  { id: 'appliance', label: 'retainer or appliance in the way' },
  { id: 'bleeding', label: 'bleeding' },
  { id: 'calculus', label: 'calculus on the site' },
  { id: 'could-not-tolerate', label: 'could not tolerate it' },
  { id: 'meter-out', label: 'meter out of use' },
  { id: 'control-out', label: 'control out of range' },
  { id: 'no-stock', label: 'no swabs in stock' },
  { id: 'other', label: 'another reason' },
];

const SITES: readonly Choice[] = [
  { id: 'lower-front-tongue-side', label: 'lower front teeth, tongue side' },
  { id: 'other', label: 'another site' },
];

type Draft = Pick<Line, 'id' | 'letter' | 'label' | 'entry' | 'value'> & { readonly said: string | undefined };

/** The reading and, once there is one, how it was taken. A visit without a swab is complete: nothing here asks for one. */
export function swabLines(place: SwabPlace): readonly Line[] {
  const { reading } = place;
  const number: Draft = {
    id: 'rlu',
    letter: 'r',
    label: 'Reading',
    entry: { kind: 'number', min: 0, unit: 'RLU', bounds: true },
    value: reading.rlu,
    said: sayReading(reading),
  };
  const notTaken: Draft = {
    id: 'notTaken',
    letter: 'w',
    label: 'No reading today, because',
    entry: { kind: 'choice', choices: NOT_TAKEN },
    value: reading.notTaken,
    said: NOT_TAKEN.find((r) => r.id === reading.notTaken)?.label,
  };
  const failed: Draft = yesNo('failed', 'f', 'Swab or meter failed', reading.failed);
  const isTaken = reading.rlu !== undefined || reading.failed === true;
  const plain = [number, ...(isTaken ? [] : [notTaken]), failed].map((draft) => lineOf(draft, false));
  return isTaken && reading.failed !== true ? [...plain, ...conditionDrafts(place).map((draft) => lineOf(draft, true))] : plain;
}

function conditionDrafts({ reading, lots, members }: SwabPlace): readonly Draft[] {
  const lotChoices = lots.map((lot) => ({ id: lot.id, label: `lot ${lot.name}` }));
  const takers = members.map((m) => ({ id: m.name, label: m.trainedSwab ? m.name : `${m.name}, not trained` }));
  return [
    yesNo('beforeCleaning', 'b', 'Before any cleaning or probing', reading.beforeCleaning),
    choice('site', 's', 'Where', SITES, reading.site),
    minutes('minutesSinceEating', 'e', 'Since eating or drinking', reading.minutesSinceEating),
    minutes('minutesSinceBrushing', 'h', 'Since brushing', reading.minutesSinceBrushing),
    minutes('minutesSinceRinsing', 'i', 'Since a mouth rinse', reading.minutesSinceRinsing),
    choice('lotId', 'l', 'Swab lot', lotChoices, reading.lotId),
    choice('operator', 'o', 'Taken by', takers, reading.operator?.name),
  ];
}

function yesNo(id: string, letter: string, label: string, value: boolean | undefined): Draft {
  return { id, letter, label, entry: { kind: 'yes-no' }, value, said: value === undefined ? undefined : value ? 'yes' : 'no' };
}

function choice(id: string, letter: string, label: string, choices: readonly Choice[], value: string | undefined): Draft {
  return { id, letter, label, entry: { kind: 'choice', choices }, value, said: choices.find((c) => c.id === value)?.label ?? value };
}

function minutes(id: string, letter: string, label: string, value: number | undefined): Draft {
  return {
    id,
    letter,
    label,
    entry: { kind: 'number', min: 0, max: 10_080, unit: 'minutes' },
    value,
    said: value === undefined ? undefined : sayMinutes(value),
  };
}

function lineOf({ said, ...draft }: Draft, wanted: boolean): Line {
  const missing = wanted ? 'not noted' : '';
  return {
    ...draft,
    mayBeUnknown: false,
    text: said ?? missing,
    tone: said !== undefined ? 'new' : wanted ? 'unknown' : 'carried',
    wanted: wanted && said === undefined,
    reconfirmable: false,
    private: false,
    sources: [],
  };
}

const sayMinutes = (value: number) => (value === AS_USUAL_MINUTES ? `${value} minutes or more` : `${formatNumber(value)} minutes`);

/** "5,150 RLU", "40 RLU or less". */
export function sayReading({ rlu, bound }: SwabReading): string | undefined {
  if (rlu === undefined) return undefined;
  const limit = bound === 'at-most' ? ' or less' : bound === 'at-least' ? ' or more' : '';
  return `${formatNumber(rlu)} RLU${limit}`;
}

const AS_USUAL_MINUTES = 60;

/** What the key "as usual" notes: usual site, before cleaning, and an hour or more since eating, brushing and rinsing. */
export const CONDITIONS_AS_USUAL = {
  beforeCleaning: true,
  site: 'lower-front-tongue-side',
  minutesSinceEating: AS_USUAL_MINUTES,
  minutesSinceBrushing: AS_USUAL_MINUTES,
  minutesSinceRinsing: AS_USUAL_MINUTES,
} as const satisfies SwabReading;

export interface SwabPresets {
  readonly now: string;
  readonly lotId: string | undefined;
  readonly operator: { readonly name: string; readonly trained: boolean } | undefined;
}

/** The reading after one more line was answered. The first number brings its time, lot and taker along. */
export function readingAfter(reading: SwabReading, line: string, reply: Reply, place: SwabPlace, presets: SwabPresets): SwabReading {
  if (reply.how !== 'asked') return reading;
  const { value } = reply;
  switch (line) {
    case 'rlu': {
      const { notTaken: _, notTakenNote: __, failed: ___, ...rest } = reading;
      const first: SwabReading = { takenAt: presets.now, lotId: presets.lotId, operator: presets.operator };
      return withoutUndefined({ ...first, ...rest, rlu: Number(value), bound: reply.bound ?? 'exact' });
    }
    case 'notTaken':
      return { notTaken: value as NotTakenReason };
    case 'failed': {
      const { rlu: _, bound: __, notTaken: ___, notTakenNote: ____, ...rest } = reading;
      const first: SwabReading = { takenAt: presets.now, lotId: presets.lotId, operator: presets.operator };
      return value === true ? withoutUndefined({ ...first, ...rest, failed: true }) : {};
    }
    case 'operator': {
      const member = place.members.find((m) => m.name === value);
      return member ? { ...reading, operator: { name: member.name, trained: member.trainedSwab } } : reading;
    }
    default:
      return { ...reading, [line]: value };
  }
}

function withoutUndefined(reading: SwabReading): SwabReading {
  return Object.fromEntries(Object.entries(reading).filter(([, value]) => value !== undefined));
}

/** "10:36, taken by Tomas, Demo meter A, lot 26-114, before cleaning". Only what was noted. */
export function sayHowTaken(reading: SwabReading, meterName: string | undefined, lots: readonly SwabLot[]): string {
  if (reading.rlu === undefined && reading.failed !== true) return '';
  const lot = lots.find((l) => l.id === reading.lotId);
  const parts = [
    reading.takenAt && formatShortClock(reading.takenAt),
    reading.operator && `taken by ${reading.operator.name}`,
    meterName,
    lot && `lot ${lot.name}`,
    reading.beforeCleaning === true && 'before cleaning',
    reading.beforeCleaning === false && 'after cleaning',
    sayTimeToReading(reading),
  ];
  return parts.filter(Boolean).join(', ');
}

/** "read 38 seconds after activation"; false where that is not known. */
function sayTimeToReading(reading: SwabReading): string | false {
  const seconds = secondsToReading(reading);
  return seconds !== undefined && `read ${sayDuration(seconds)} after activation`;
}

const SITE_WORDS = { 'lower-front-tongue-side': 'lower front teeth, tongue side', other: 'another site' } as const;

/** Everything noted of how the swab was taken, each in a few words; what was not noted is left out. */
export function listNoted(reading: SwabReading, lots: readonly SwabLot[]): readonly string[] {
  const { beforeCleaning, lotId, operator, site, activatedAt, takenAt } = reading;
  const clock = takenAt !== undefined && `${reading.failed === true ? 'failed' : 'read'} at ${formatClock(takenAt)}`;
  return [
    beforeCleaning !== undefined && (beforeCleaning ? 'before cleaning' : 'after cleaning'),
    ...listSince(reading),
    lotId !== undefined && `lot ${lots.find((l) => l.id === lotId)?.name ?? 'not on record'}`,
    operator && `taken by ${operator.name}`,
    site && SITE_WORDS[site],
    activatedAt !== undefined && `activated at ${formatClock(activatedAt)}`,
    clock,
  ].filter((part) => typeof part === 'string');
}

function listSince({ minutesSinceEating, minutesSinceBrushing, minutesSinceRinsing }: SwabReading): readonly string[] {
  const all = [minutesSinceEating, minutesSinceBrushing, minutesSinceRinsing];
  if (all.every((m) => m === AS_USUAL_MINUTES)) return [`${sayMinutes(AS_USUAL_MINUTES)} since eating, brushing and rinsing`];
  const names = ['eating', 'brushing', 'rinsing'];
  return all.flatMap((m, i) => (m === undefined ? [] : [`${sayMinutes(m)} since ${names[i]}`]));
}

/** The whole of a reading in words, so that two of them can be told apart: the number or why there is none, then how it was taken. */
export function sayWholeReading(reading: SwabReading | null | undefined, lots: readonly SwabLot[]): string {
  const { notTaken, notTakenNote, failed } = reading ?? {};
  const reason = NOT_TAKEN.find((r) => r.id === notTaken)?.label;
  const head =
    notTaken !== undefined
      ? `no swab today, ${[reason ?? notTaken, notTakenNote].filter(Boolean).join(': ')}`
      : failed === true
        ? 'swab or meter failed'
        : (sayReading(reading ?? {}) ?? 'no number yet');
  const noted = listNoted(reading ?? {}, lots);
  return noted.length === 0 && head === 'no number yet' ? 'nothing noted' : [head, ...noted].join(', ');
}

/** The lot offered first: in date, and the one that expires soonest. */
export function presetLot(lots: readonly SwabLot[], onDate: string): string | undefined {
  return [...lots].filter((lot) => lot.expiresOn >= onDate).sort((a, b) => (a.expiresOn < b.expiresOn ? -1 : 1))[0]?.id;
}

/** What was typed as a number: "5150", "5,150", "0.18"; with bounds also "<40" and ">60000". */
export function parseNumber(typed: string, entry: Extract<Entry, { kind: 'number' }>): Reply | { readonly problem: string } {
  const match = /^\s*([<>]?)\s*(\d[\d,  ]*(?:\.\d+)?)\s*$/.exec(typed);
  const digits = match?.[2]?.replace(/[,  ]/g, '');
  if (!match || digits === undefined || (match[1] && entry.bounds !== true)) return { problem: 'A number is needed here.' };
  const value = Number(digits);
  if (entry.min !== undefined && value < entry.min) return { problem: `The lowest number here is ${formatNumber(entry.min)}.` };
  if (entry.max !== undefined && value > entry.max) return { problem: `The highest number here is ${formatNumber(entry.max)}.` };
  const bound = match[1] === '<' ? 'at-most' : match[1] === '>' ? 'at-least' : undefined;
  return { how: 'asked', value, ...(bound ? { bound } : {}) };
}

/** What is wrong with the reading as typed, in one sentence. */
export function readingProblem(reading: SwabReading, meter: Meter | undefined, lots: readonly SwabLot[]): string | undefined {
  const problem = checkReading(reading, meter, lots)[0];
  return problem && `Reading: ${problem.message}.`;
}
