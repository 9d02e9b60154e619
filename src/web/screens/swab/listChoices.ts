import { NOT_TAKEN_REASONS, type NotTakenReason, type SwabLot, type SwabReading } from '../../../core/reading/types.ts';
import { presetLot } from '../visit/swabLines.ts';
import { stepBack } from './stepBack.ts';
import { enoughMinutes, findMeter, SINCE_STEPS, type SinceField, type SwabFlow, type SwabSetting, type SwabStep } from './swabFlow.ts';

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
    case 'not-compared':
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
