import type { ChecksView } from '../../../api/swabChecks.ts';
import type { StopOverride } from '../../../core/checks/control.ts';
import {
  type CheckLimits,
  type DueCheck,
  findDueCheck,
  findLastCheck,
  type MeterCheck,
  type MeterCheckPlan,
  sayCheck,
} from '../../../core/checks/meterCheck.ts';
import type { Meter } from '../../../core/reading/types.ts';
import { formatDate, formatNumber, joinWords } from '../../format.ts';

/** One meter by its own checks, as it stands today. */
export interface CheckedMeter {
  readonly meter: Meter;
  readonly entry: ChecksView['meterCheckPlans'][number] | undefined;
  /** Oldest first, void ones too. */
  readonly checks: readonly MeterCheck[];
  /** The newest that counts. */
  readonly last: MeterCheck | undefined;
  readonly due: DueCheck;
  readonly isStopped: boolean;
  /** Given today, of the last check. */
  readonly override: StopOverride | undefined;
}

type Seen = Pick<ChecksView, 'meters' | 'meterChecks' | 'meterCheckPlans' | 'overrides' | 'today' | 'timeZone'>;

export function listCheckedMeters({ meters, meterChecks, meterCheckPlans, overrides, today, timeZone }: Seen): readonly CheckedMeter[] {
  return meters.map(({ meter }) => {
    const checks = meterChecks.filter(({ meterId }) => meterId === meter.id);
    const entry = meterCheckPlans.find(({ plan }) => plan.meterId === meter.id);
    const last = findLastCheck(checks, meter.id);
    const override = overrides.find(({ controlId }) => controlId === last?.id);
    const isStopped = last !== undefined && !last.note.passed;
    return { meter, entry, checks, last, due: findDueCheck(entry?.plan, last, { today, timeZone }), isStopped, override };
  });
}

/** "Last check of the meter: 12 November 2026, passed, by its own check device, 1,020 RLU (Tomas Quill)." */
export function sayLastCheck({ last }: Pick<CheckedMeter, 'last'>): string {
  if (!last) return 'No check of the meter itself is on record.';
  const by = last.operator === null ? '' : ` (${last.operator})`;
  return `Last check of the meter: ${formatDate(last.takenAt)}, ${sayOutcome(last)}, ${sayCheck(last)}${by}.`;
}

export const sayOutcome = ({ note }: Pick<MeterCheck, 'note'>): string => (note.passed ? 'passed' : 'did not pass');

/** What the first sentence of the page says of meters whose check did not pass; empty without. */
export function sayStoppedMeters(meters: readonly CheckedMeter[]): string {
  const stopped = meters.filter(({ isStopped }) => isStopped);
  if (stopped.length === 0) return '';
  const names = joinWords(stopped.map(({ meter }) => meter.name));
  return stopped.every(({ override }) => override !== undefined)
    ? `The check of ${names} did not pass; today's readings count all the same, by a named decision.`
    : `The check of ${names} did not pass. Run today without swabs.`;
}

/** Which meters are due for a check; empty without. */
export function sayDueMeters(meters: readonly CheckedMeter[]): string {
  const due = meters.filter(({ due, isStopped }) => due.isDue && !isStopped);
  return due.length === 0 ? '' : `A check of the meter is due: ${joinWords(due.map(({ meter }) => meter.name))}.`;
}

export const sayLimits = ({ lowRlu, highRlu }: CheckLimits): string => `${formatNumber(lowRlu)} to ${formatNumber(highRlu)} RLU`;

/** "Checked every 30 days, with 900 to 1,100 RLU on its device." */
export function sayCheckPlan(plan: MeterCheckPlan | undefined): string {
  if (!plan) return '';
  const every = plan.everyDays === 1 ? 'Checked every day' : `Checked every ${plan.everyDays} days`;
  return plan.limits ? `${every}; its device should show ${sayLimits(plan.limits)}.` : `${every}.`;
}
