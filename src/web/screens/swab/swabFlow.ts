import type { ControlSpan } from '../../../core/checks/controlSpan.ts';
import { parseTakenAt, type TakenAt } from '../../../core/reading/parseTakenAt.ts';
import { evaluateConditions } from '../../../core/reading/readingConditions.ts';
import type {
  ConditionResult,
  Meter,
  NotTakenReason,
  PastReading,
  SwabCondition,
  SwabLot,
  SwabReading,
} from '../../../core/reading/types.ts';
import type { MouthDecision } from '../../../core/visit/types.ts';
import { parseNumber, presetLot, readingProblem } from '../visit/swabLines.ts';

/** What stands on the page, one at a time. The first ten are the way to a number; the next seven stop it. */
export type SwabStep =
  | 'before-cleaning'
  | 'since'
  | 'since-eating'
  | 'since-brushing'
  | 'since-rinsing'
  | 'taken-by'
  | 'site'
  | 'start'
  | 'count-down'
  | 'number'
  | 'no-site'
  | 'too-soon'
  | 'no-meter'
  | 'control-out'
  | 'after-cleaning'
  | 'other-site'
  | 'stopped'
  | 'choose-reason'
  | 'type-note'
  | 'not-taken'
  | 'failed'
  | 'read';

/** What the practice and the record say; the same all through one swab. */
export interface SwabSetting {
  readonly meters: readonly Meter[];
  readonly lots: readonly SwabLot[];
  /** In the order in which they are offered. */
  readonly members: readonly { readonly name: string; readonly trainedSwab: boolean }[];
  readonly pastReadings: readonly PastReading[];
  readonly conditions: readonly SwabCondition[];
  readonly onDate: string;
  readonly timeZone: string | undefined;
  /** How the controls of meters and lots stand today; absent = not known. */
  readonly controls?: readonly ControlSpan[] | undefined;
  /** What this mouth means for a swab; null where the usual site is there. */
  readonly mouth: MouthDecision['swab'];
}

/** What time it is: `sinceActivationS` undefined = not known, because a clock was set back. */
export interface SwabMoment {
  readonly now: string;
  readonly sinceActivationS: number | undefined;
}

export type SinceField = 'minutesSinceEating' | 'minutesSinceBrushing' | 'minutesSinceRinsing';

interface Noted {
  readonly reading: SwabReading;
  readonly meterId: string | undefined;
  /** Asked, and not known: they stay unknown and are not asked again. */
  readonly notKnown: readonly (SinceField | 'since')[];
  readonly menu: 'choose-reason' | 'type-note' | null;
}

export interface SwabFlow extends Noted {
  /** Why the last key or number was not taken over. */
  readonly problem: string | null;
  /** As it was before each key, for undo. */
  readonly before: readonly Noted[];
}

export type SwabEvent = { readonly key: string } | { readonly typed: string };

export interface SwabChoice {
  readonly key: string;
  readonly does: ChoiceDoes;
  /** Already so: the lot or meter that stands there. */
  readonly isChosen?: boolean;
}

/** What a key stands for; its words are in `swabWords.ts`. */
export type ChoiceDoes =
  | { readonly kind: 'before-cleaning'; readonly value: boolean }
  | { readonly kind: 'hour-since-all'; readonly value: boolean }
  | { readonly kind: 'minutes'; readonly field: SinceField; readonly minutes: number | undefined }
  | { readonly kind: 'member'; readonly name: string; readonly trained: boolean }
  | { readonly kind: 'lot'; readonly lotId: string }
  | { readonly kind: 'meter'; readonly meterId: string }
  | { readonly kind: 'site'; readonly value: NonNullable<SwabReading['site']> }
  | { readonly kind: 'start' }
  | { readonly kind: 'reason'; readonly reason: NotTakenReason }
  | { readonly kind: 'no-swab' }
  | { readonly kind: 'failed' }
  | { readonly kind: 'undo' };

export const SINCE_STEPS = {
  'since-eating': 'minutesSinceEating',
  'since-brushing': 'minutesSinceBrushing',
  'since-rinsing': 'minutesSinceRinsing',
} as const satisfies Partial<Record<SwabStep, SinceField>>;

export const NOT_TAKEN_REASONS: readonly NotTakenReason[] = [
  'declined',
  'no-site',
  'appliance',
  'bleeding',
  'calculus',
  'could-not-tolerate',
  'meter-out',
  'control-out',
  'no-stock',
  'other',
];

export function beginFlow(reading: SwabReading, meterId: string | undefined): SwabFlow {
  return { reading, meterId, notKnown: [], menu: null, problem: null, before: [] };
}

export function findMeter({ meters }: SwabSetting, meterId: string | undefined): Meter | undefined {
  return meters.find((m) => m.id === meterId) ?? (meters.length === 1 ? meters[0] : undefined);
}

/**
 * Conditions that must be known and met before a number is taken, and are not: those whose failing makes a reading not counted.
 * They are judged as if the swab were taken now; a swab that was read keeps its own time.
 */
export function listOpenConditions(reading: SwabReading, meter: Meter | undefined, setting: SwabSetting, now: string): ConditionResult[] {
  const table = setting.conditions.filter((c) => c.failing === 'not-counted');
  const at = (iso: string) => parseTakenAt(iso, setting.timeZone);
  const results = evaluateConditions(
    {
      reading,
      meter,
      taken: at(reading.takenAt ?? now),
      lots: setting.lots,
      past: setting.pastReadings.map((p) => at(p.takenAt)).filter((p): p is TakenAt => p !== undefined),
      onDate: setting.onDate,
      controls: setting.controls,
      timeZone: setting.timeZone,
    },
    table,
  );
  // The range of the meter is judged with the number, so before it only the meter itself may be missing.
  const waitsForNumber = (id: string) => id === 'meter-range' && meter !== undefined && reading.rlu === undefined;
  const isOpen = ({ state, effect }: ConditionResult, { unknown }: SwabCondition) =>
    state === 'failing' ? effect !== 'flag' : state === 'unknown' && unknown !== 'list';
  return results.filter((result, i) => table[i] && isOpen(result, table[i]) && !waitsForNumber(result.id));
}

/** The control that stops this meter with the pack in use, or with the one that would be taken first. */
export function findStoppedControl(
  reading: SwabReading,
  meter: Meter | undefined,
  setting: SwabSetting,
  now: string,
): ConditionResult | undefined {
  const lotId = reading.lotId ?? presetLot(setting.lots, setting.onDate);
  return listOpenConditions({ ...reading, lotId }, meter, setting, now).find(({ id }) => id === 'control-in-line');
}

/** The one step that stands on the page. */
export function findStep(flow: SwabFlow, setting: SwabSetting, moment: SwabMoment): SwabStep {
  const { reading, menu } = flow;
  if (menu) return menu;
  if (reading.notTaken !== undefined) return 'not-taken';
  if (reading.failed === true) return 'failed';
  if (reading.rlu !== undefined) return 'read';
  return conditionStep(flow, setting, moment.now) ?? meterStep(flow, setting, moment);
}

function conditionStep({ reading, meterId, notKnown }: SwabFlow, setting: SwabSetting, now: string): SwabStep | undefined {
  const meter = findMeter(setting, meterId);
  const open = new Set(listOpenConditions(reading, meter, setting, now).map(({ id }) => id));
  if (setting.mouth?.site === 'none') return 'no-site';
  if (open.has('once-in-24-h')) return 'too-soon';
  if (!meter && setting.meters.length === 0) return 'no-meter';
  if (findStoppedControl(reading, meter, setting, now)) return 'control-out';
  if (open.has('before-cleaning')) return reading.beforeCleaning === false ? 'after-cleaning' : 'before-cleaning';
  const since = sinceStep(reading, notKnown);
  if (since) return since;
  if (!meter || open.has('lot-in-date') || reading.operator === undefined) return 'taken-by';
  if (open.has('site')) return reading.site === 'other' ? 'other-site' : 'site';
  return open.size > 0 ? 'stopped' : undefined;
}

function sinceStep(reading: SwabReading, notKnown: Noted['notKnown']): SwabStep | undefined {
  const isOpen = (field: SinceField) => reading[field] === undefined && !notKnown.includes(field);
  const open = (Object.keys(SINCE_STEPS) as (keyof typeof SINCE_STEPS)[]).filter((step) => isOpen(SINCE_STEPS[step]));
  return open.length === 3 && !notKnown.includes('since') ? 'since' : open[0];
}

function meterStep({ reading, meterId }: SwabFlow, setting: SwabSetting, { sinceActivationS }: SwabMoment): SwabStep {
  if (reading.activatedAt === undefined) return 'start';
  const countdownS = findMeter(setting, meterId)?.countdownS ?? 0;
  return sinceActivationS !== undefined && sinceActivationS < countdownS ? 'count-down' : 'number';
}

/** Each key that does something where the page stands. Nothing else does. */
export function listChoices(step: SwabStep, flow: SwabFlow, setting: SwabSetting): readonly SwabChoice[] {
  return [...answersTo(step, flow, setting), ...besides(step, flow)];
}

function answersTo(step: SwabStep, flow: SwabFlow, setting: SwabSetting): readonly SwabChoice[] {
  switch (step) {
    case 'before-cleaning':
      return yesNo((value) => ({ kind: 'before-cleaning', value }), ['y', 'n']);
    case 'since':
      return yesNo((value) => ({ kind: 'hour-since-all', value }), ['y', 'n']);
    case 'since-eating':
    case 'since-brushing':
    case 'since-rinsing':
      return minutesChoices(step, setting);
    case 'taken-by':
      return [...memberChoices(flow, setting), ...supplyChoices(flow, setting)];
    case 'control-out':
      return supplyChoices(flow, setting);
    case 'site':
      return [
        { key: 'y', does: { kind: 'site', value: 'lower-front-tongue-side' } },
        { key: 'o', does: { kind: 'site', value: 'other' } },
      ];
    case 'start':
      return [{ key: 's', does: { kind: 'start' } }];
    case 'choose-reason':
      return NOT_TAKEN_REASONS.map((reason, i) => ({ key: digitAt(i), does: { kind: 'reason', reason } }));
    default:
      return [];
  }
}

function yesNo(does: (value: boolean) => ChoiceDoes, [yes, no]: readonly [string, string]): readonly SwabChoice[] {
  return [
    { key: yes, does: does(true) },
    { key: no, does: does(false) },
  ];
}

const SHORTER_MINUTES = [45, 30, 15, 5];

/** The waiting time of the condition or more, some shorter ones, and not known. */
function minutesChoices(step: keyof typeof SINCE_STEPS, setting: SwabSetting): readonly SwabChoice[] {
  const field = SINCE_STEPS[step];
  const enough = enoughMinutes(step, setting);
  const minutes = [enough, ...SHORTER_MINUTES.filter((m) => m < enough)];
  return [
    ...minutes.map((m, i): SwabChoice => ({ key: digitAt(i), does: { kind: 'minutes', field, minutes: m } })),
    { key: 'd', does: { kind: 'minutes', field, minutes: undefined } },
  ];
}

export function enoughMinutes(step: keyof typeof SINCE_STEPS, { conditions }: SwabSetting): number {
  const limit = conditions.find((c) => c.id === step)?.limit;
  if (limit === undefined) throw new RangeError(`the swab condition ${step} needs its limit`);
  return limit;
}

function memberChoices({ reading }: SwabFlow, { members }: SwabSetting): readonly SwabChoice[] {
  return members.slice(0, 10).map(({ name, trainedSwab }, i) => ({
    key: digitAt(i),
    does: { kind: 'member', name, trained: trainedSwab },
    isChosen: reading.operator?.name === name,
  }));
}

/** Letters that no other key of the page uses. */
const SUPPLY_LETTERS = [...'abceghijklmnqrtuxy'];

/** Packs of swabs, and meters where there is more than one. */
function supplyChoices(flow: SwabFlow, setting: SwabSetting): readonly SwabChoice[] {
  const lotId = flow.reading.lotId ?? presetLot(setting.lots, setting.onDate);
  const meterId = findMeter(setting, flow.meterId)?.id;
  const lots = byDate(setting).map(({ id }) => ({ does: { kind: 'lot', lotId: id } as const, isChosen: id === lotId }));
  const meters = setting.meters.length < 2 ? [] : setting.meters;
  const all = [...lots, ...meters.map(({ id }) => ({ does: { kind: 'meter', meterId: id } as const, isChosen: id === meterId }))];
  return all.flatMap((choice, i) => (SUPPLY_LETTERS[i] === undefined ? [] : [{ ...choice, key: SUPPLY_LETTERS[i] }]));
}

/** What may be used first, soonest to expire first, then what is past its date. */
function byDate({ lots, onDate }: SwabSetting): readonly SwabLot[] {
  const isPast = (lot: SwabLot) => (lot.expiresOn < onDate ? 1 : 0);
  return [...lots].sort((a, b) => isPast(a) - isPast(b) || (a.expiresOn < b.expiresOn ? -1 : 1));
}

/** 1 to 9, then 0. */
const digitAt = (i: number): string => String((i + 1) % 10);

const WITHOUT_NO_SWAB: readonly SwabStep[] = ['choose-reason', 'type-note', 'not-taken', 'failed', 'read'];
const MAY_FAIL: readonly SwabStep[] = ['start', 'count-down', 'number'];

function besides(step: SwabStep, flow: SwabFlow): readonly SwabChoice[] {
  const choices: SwabChoice[] = [];
  if (!WITHOUT_NO_SWAB.includes(step)) choices.push({ key: 'w', does: { kind: 'no-swab' } });
  if (MAY_FAIL.includes(step)) choices.push({ key: 'f', does: { kind: 'failed' } });
  if (flow.before.length > 0 || stepBack(flow.reading) !== undefined) choices.push({ key: 'z', does: { kind: 'undo' } });
  return choices;
}

/** What one key, or what was typed with Enter, makes of it. A key that does nothing here returns the same flow. */
export function afterEvent(flow: SwabFlow, event: SwabEvent, setting: SwabSetting, moment: SwabMoment): SwabFlow {
  const step = findStep(flow, setting, moment);
  if ('typed' in event) {
    if (step === 'number') return takeNumber(flow, event.typed, setting, moment);
    return step === 'type-note' ? takeNote(flow, event.typed) : flow;
  }
  const choice = listChoices(step, flow, setting).find(({ key }) => key === event.key);
  if (choice) return apply(flow, choice.does, setting, moment);
  return event.key === 'Escape' && flow.menu ? undo(flow) : flow;
}

function apply(flow: SwabFlow, does: ChoiceDoes, setting: SwabSetting, { now }: SwabMoment): SwabFlow {
  const { reading } = flow;
  const note = (part: Partial<SwabReading>, more: Partial<Noted> = {}) =>
    move(flow, { ...more, reading: withLot({ ...reading, ...part }, setting) });
  switch (does.kind) {
    case 'before-cleaning':
      return note({ beforeCleaning: does.value });
    case 'hour-since-all':
      return does.value ? note(enoughSinceAll(setting)) : move(flow, { notKnown: [...flow.notKnown, 'since'] });
    case 'minutes':
      return does.minutes === undefined ? move(flow, { notKnown: [...flow.notKnown, does.field] }) : note({ [does.field]: does.minutes });
    case 'member':
      return note({ operator: { name: does.name, trained: does.trained } });
    case 'lot':
      return note({ lotId: does.lotId });
    case 'meter':
      return move(flow, { meterId: does.meterId });
    case 'site':
      return note({ site: does.value });
    case 'start':
      return note({ activatedAt: now });
    case 'no-swab':
      return move(flow, { menu: 'choose-reason' });
    case 'reason':
      return does.reason === 'other' ? move(flow, { menu: 'type-note' }) : move(flow, { menu: null, reading: { notTaken: does.reason } });
    case 'failed':
      return move(flow, { reading: { ...reading, takenAt: now, failed: true } });
    case 'undo':
      return undo(flow);
  }
}

function move(flow: SwabFlow, part: Partial<Noted>): SwabFlow {
  const { problem: _, before, ...noted } = flow;
  return { ...noted, ...part, problem: null, before: [...before, noted] };
}

/** The pack that is open goes along with the first answer; which one it is stands on the page and can be changed. */
function withLot(reading: SwabReading, { lots, onDate }: SwabSetting): SwabReading {
  const preset = reading.lotId === undefined ? presetLot(lots, onDate) : undefined;
  return preset === undefined ? reading : { ...reading, lotId: preset };
}

function enoughSinceAll(setting: SwabSetting): SwabReading {
  return {
    minutesSinceEating: enoughMinutes('since-eating', setting),
    minutesSinceBrushing: enoughMinutes('since-brushing', setting),
    minutesSinceRinsing: enoughMinutes('since-rinsing', setting),
  };
}

function takeNumber(flow: SwabFlow, typed: string, setting: SwabSetting, { now }: SwabMoment): SwabFlow {
  const refuse = (problem: string): SwabFlow => ({ ...flow, problem });
  const reply = parseNumber(typed, { kind: 'number', min: 0, bounds: true });
  if ('problem' in reply || reply.how !== 'asked') return refuse('problem' in reply ? reply.problem : 'A number is needed here.');
  const reading: SwabReading = { ...flow.reading, rlu: Number(reply.value), bound: reply.bound ?? 'exact', takenAt: now };
  const meter = findMeter(setting, flow.meterId);
  const problem = readingProblem(reading, meter, setting.lots);
  if (problem) return refuse(problem);
  const open = listOpenConditions(reading, meter, setting, now);
  if (open.length > 0) return refuse(`Not taken over, because it would not be counted: ${open.map((c) => c.says).join('; ')}.`);
  return move(flow, { reading });
}

const LONGEST_NOTE = 120;

function takeNote(flow: SwabFlow, typed: string): SwabFlow {
  const note = typed.trim();
  if (note.length > LONGEST_NOTE) return { ...flow, problem: `At most ${LONGEST_NOTE} letters, please.` };
  return move(flow, { menu: null, reading: note === '' ? { notTaken: 'other' } : { notTaken: 'other', notTakenNote: note } });
}

function undo(flow: SwabFlow): SwabFlow {
  const last = flow.before.at(-1);
  if (last) return { ...last, problem: null, before: flow.before.slice(0, -1) };
  const reading = stepBack(flow.reading);
  return reading ? { ...flow, reading, notKnown: [], menu: null, problem: null } : flow;
}

/** In the order in which a swab is noted. */
const ORDER: readonly (readonly (keyof SwabReading)[])[] = [
  ['beforeCleaning'],
  ['minutesSinceEating', 'minutesSinceBrushing', 'minutesSinceRinsing'],
  ['operator'],
  ['site'],
  ['activatedAt'],
  ['failed', 'takenAt'],
  ['notTaken', 'notTakenNote'],
];

/** The reading without what was noted last, where the page was opened anew and remembers no keys. A number is only taken back by whoever typed it. */
function stepBack(reading: SwabReading): SwabReading | undefined {
  const last = reading.rlu === undefined ? ORDER.findLast((fields) => fields.some((f) => reading[f] !== undefined)) : undefined;
  if (!last) return undefined;
  return Object.fromEntries(Object.entries(reading).filter(([field]) => !last.includes(field as keyof SwabReading)));
}

/** Whole seconds left, never below 0. */
export function secondsLeft(countdownS: number, { sinceActivationS }: SwabMoment): number {
  return sinceActivationS === undefined ? 0 : Math.max(0, Math.ceil(countdownS - sinceActivationS));
}
