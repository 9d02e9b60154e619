import type { SwabReading } from '../../../core/reading/types.ts';
import { parseNumber, presetLot, readingProblem } from '../visit/swabLines.ts';
import { findStep } from './findStep.ts';
import { type ChoiceDoes, listChoices } from './listChoices.ts';
import { listOpenConditions } from './listOpenConditions.ts';
import { stepBack } from './stepBack.ts';
import { enoughMinutes, findMeter, type Noted, type SwabEvent, type SwabFlow, type SwabMoment, type SwabSetting } from './swabFlow.ts';

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
