import type { SwabReading } from '../../../core/reading/types.ts';
import { findStoppedControl, findUncomparedLot, listOpenConditions } from './listOpenConditions.ts';
import {
  findMeter,
  type Noted,
  SINCE_STEPS,
  type SinceField,
  type SwabFlow,
  type SwabMoment,
  type SwabSetting,
  type SwabStep,
} from './swabFlow.ts';

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
  if (findUncomparedLot(reading, setting)) return 'not-compared';
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
