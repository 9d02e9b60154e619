import { parseTakenAt, sayDate } from '../reading/parseTakenAt.ts';
import { sayRlu } from '../reading/sayRlu.ts';
import type { Bound } from '../reading/types.ts';
import { addDays } from '../visit/calendar.ts';
import type { StopOverride } from './control.ts';
import type { ControlSpan } from './controlSpan.ts';

/** What the meter itself was checked by; swabs are checked by controls. */
export type MeterCheckBy = 'device' | 'solution';

/** Limits that stand on the check device, in RLU. */
export interface CheckLimits {
  readonly lowRlu: number;
  readonly highRlu: number;
}

/** One check of a meter, not of its swabs. */
export interface MeterCheck {
  readonly id: string;
  readonly meterId: string;
  /** Name of whoever made it; null = not noted. */
  readonly operator: string | null;
  /** UTC. */
  readonly takenAt: string;
  readonly state: 'valid' | 'void';
  /** Why it does not count. */
  readonly voidReason: string | null;
  /** Null = the check gives no number, or it was not noted. */
  readonly rlu: number | null;
  readonly bound: Bound;
  readonly note: MeterCheckNote;
  readonly version: number;
}

/** How it went. What was not noted is absent. */
export interface MeterCheckNote {
  readonly checkedBy: MeterCheckBy;
  readonly passed: boolean;
  /** By which the number was judged; absent = a member said whether it passed. */
  readonly limits?: CheckLimits | undefined;
  readonly temperatureDegC?: number | undefined;
  readonly words?: string | undefined;
}

/** How often one meter is checked, as the practice has typed it. There is no interval of ours. */
export interface MeterCheckPlan {
  readonly meterId: string;
  readonly everyDays: number;
  readonly limits?: CheckLimits | undefined;
}

export const CHECKED_BY_WORDS: Readonly<Record<MeterCheckBy, string>> = {
  device: 'its own check device',
  solution: 'the control solution',
};

/** Whether a number lies within the limits of the device; undefined where there is no number, or nothing to judge it by. */
export function isWithinLimits(rlu: number | undefined, by: MeterCheckBy, limits: CheckLimits | undefined): boolean | undefined {
  if (rlu === undefined || by !== 'device' || limits === undefined) return undefined;
  return rlu >= limits.lowRlu && rlu <= limits.highRlu;
}

/** "by its own check device, 1,020 RLU". */
export function sayCheck({ rlu, bound, note }: Pick<MeterCheck, 'rlu' | 'bound' | 'note'>): string {
  const by = `by ${CHECKED_BY_WORDS[note.checkedBy]}`;
  return rlu === null ? by : `${by}, ${sayRlu(rlu, bound)}`;
}

/** The newest check of one meter that counts. @param checks  any order */
export function findLastCheck(checks: readonly MeterCheck[], meterId: string): MeterCheck | undefined {
  return checks
    .filter((check) => check.meterId === meterId && check.state === 'valid')
    .sort(inTime)
    .at(-1);
}

const inTime = (a: MeterCheck, b: MeterCheck): number => (a.takenAt < b.takenAt ? -1 : a.takenAt > b.takenAt ? 1 : a.id < b.id ? -1 : 1);

/**
 * How meters stood by their own checks over a stretch of time, for every lot: the check before it, and each one within.
 * @param from       UTC, where the stretch begins
 * @param overrides  those that hold on the day of the stretch
 */
export function listMeterSpans(checks: readonly MeterCheck[], from: string, overrides: readonly StopOverride[]): readonly ControlSpan[] {
  const counted = checks.filter(({ state }) => state === 'valid').sort(inTime);
  return [...new Set(counted.map(({ meterId }) => meterId))].flatMap((meterId) => {
    const spans = counted.filter((check) => check.meterId === meterId).map((check) => spanOf(check, overrides));
    return [...spans.filter((span) => span.from < from).slice(-1), ...spans.filter((span) => span.from >= from)];
  });
}

function spanOf(check: MeterCheck, overrides: readonly StopOverride[]): ControlSpan {
  const state = check.note.passed ? 'in-control' : 'out';
  const override = state === 'out' ? overrides.find(({ controlId }) => controlId === check.id) : undefined;
  const said = override && { by: override.by, at: override.at, reason: override.reason };
  const { meterId, id: controlId, takenAt: from } = check;
  return { meterId, controlId, from, state, says: sayCheck(check), ...(said && { override: said }) };
}

export interface DueCheck {
  readonly isDue: boolean;
  readonly says: string;
}

/**
 * When the next check of a meter is due, in words.
 * @param plan   absent = the practice has set no interval, so nothing is due
 * @param last   the newest check that counts
 * @param today  ISO local date
 */
export function findDueCheck(
  plan: MeterCheckPlan | undefined,
  last: MeterCheck | undefined,
  { today, timeZone }: { readonly today: string; readonly timeZone?: string | undefined },
): DueCheck {
  if (last && !last.note.passed) return { isDue: true, says: 'Another is due now, as the last did not pass.' };
  if (!plan) return { isDue: false, says: 'How often it is checked is not set.' };
  const lastOn = last && parseTakenAt(last.takenAt, timeZone)?.localDate;
  if (lastOn === undefined) return { isDue: true, says: 'A check is due today: there is none on record.' };
  const dueOn = addDays(lastOn, plan.everyDays);
  if (dueOn > today) return { isDue: false, says: `The next is due on ${sayDate(dueOn)}.` };
  return { isDue: true, says: dueOn === today ? 'The next is due today.' : `The next was due on ${sayDate(dueOn)}, overdue.` };
}
