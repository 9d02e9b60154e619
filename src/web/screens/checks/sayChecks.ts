import type { ChecksView } from '../../../api/swabChecks.ts';
import type { ControlPlan, StopOverride } from '../../../core/checks/control.ts';
import { findDueControl } from '../../../core/checks/findDueControl.ts';
import { type JudgedControl, type JudgedLot, judgeControls } from '../../../core/checks/judgeControls.ts';
import { type ControlStop, listStops } from '../../../core/checks/listStops.ts';
import { sayRlu } from '../../../core/reading/sayRlu.ts';
import type { Meter, SwabLot } from '../../../core/reading/types.ts';
import { presetLot } from '../visit/swabLines.ts';

/** One meter with the lot in use, as it stands today. */
export interface MeterToday {
  readonly meter: Meter;
  readonly plan: ControlPlan | undefined;
  /** Undefined where no lot is in date. */
  readonly lot: SwabLot | undefined;
  readonly judged: readonly JudgedLot[];
  /** Of any lot, the oldest of each first. */
  readonly stops: readonly ControlStop[];
  /** The newest that counts, of the lot in use. */
  readonly newest: JudgedControl | undefined;
  readonly override: StopOverride | undefined;
  readonly isDue: boolean;
  readonly dueSays: string;
}

const NO_PLAN = 'There is no control plan for this meter yet: nothing is due, and drift goes unnoticed.';

export function listMetersToday(view: ChecksView): readonly MeterToday[] {
  const judged = judgeControls(
    view.controls,
    view.plans.map(({ plan }) => plan),
    view.resolutions,
  );
  const lot = view.lots.find(({ id }) => id === presetLot(view.lots, view.today));
  return view.meters.map(({ meter }) => {
    const plan = view.plans.find((entry) => entry.plan.meterId === meter.id)?.plan;
    const ofMeter = judged.filter(({ meterId }) => meterId === meter.id);
    const newest = findNewest(ofMeter, lot?.id);
    const override = view.overrides.find(({ controlId }) => controlId === newest?.control.id);
    const stops = listStops(ofMeter, view.resolutions);
    return { meter, plan, lot, judged: ofMeter, stops, newest, override, ...dueOf(view, meter.id, plan, lot) };
  });
}

export function findNewest(judged: readonly JudgedLot[], lotId: string | undefined): JudgedControl | undefined {
  return judged.find((lot) => lot.lotId === lotId)?.controls.findLast(({ state }) => state !== 'void');
}

function dueOf(view: ChecksView, meterId: string, plan: ControlPlan | undefined, lot: SwabLot | undefined) {
  if (!plan) return { isDue: false, dueSays: NO_PLAN };
  if (!lot) return { isDue: false, dueSays: 'No swab lot is in date, so no control is due.' };
  const controls = view.controls.filter((control) => control.meterId === meterId);
  const { isDue, says } = findDueControl(plan.every, controls, { lotId: lot.id, today: view.today, timeZone: view.timeZone });
  return { isDue, dueSays: says };
}

/** The answer to one control, in words. */
export function sayJudged({ control, state, says }: JudgedControl, waitsFor: string): string {
  const number = sayRlu(control.rlu, control.bound);
  switch (state) {
    case 'void':
      return `${number}: not counted, ${control.voidReason}.`;
    case 'no-target':
      return waitsFor === ''
        ? `${number}: noted, one of the first that make the target.`
        : `${number}: noted. The target waits for more: ${waitsFor}.`;
    case 'in-control':
      return `${number}: in line.`;
    case 'warning':
      return `${number}: in line, and worth another look: ${says}. Take one more control.`;
    case 'out':
      return `${number}: out of limits, ${says}.`;
  }
}

/** The state alone, for a table. */
export const STATE_WORDS: Readonly<Record<JudgedControl['state'], string>> = {
  void: 'not counted',
  'no-target': 'makes the target',
  'in-control': 'in line',
  warning: 'in line, worth a look',
  out: 'out of limits',
};

/** "0.4 sd above". */
export function sayDistance(z: number | undefined): string {
  if (z === undefined) return 'no target';
  const size = Math.abs(z).toFixed(1);
  return size === '0.0' ? 'on the target' : `${size} sd ${z > 0 ? 'above' : 'below'}`;
}

export function sayEvery({ every }: ControlPlan): string {
  if (every.kind === 'daily') return 'a control every day';
  if (every.kind === 'weekly-and-new-lot') return 'a control every week and with each new lot';
  return every.days === 1 ? 'a control every day' : `a control every ${every.days} days and with each new lot`;
}
