// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { minutesBelowEach } from '../model/readCurve.ts';
import type { DayCurve } from '../types.ts';
import type { AcidLine, AcidLineId } from './acidLines.ts';
import type { Span } from './nightSpans.ts';
import type { AcidDay, DayEvent } from './types.ts';

const MICROMOL = 6;
/** An event counts as over once the plaque is this close to where it was at rest. */
const BACK_WITHIN_PH = 0.2;
/** What comes later than this after the end of an event is not laid to it. */
const LOOK_MINUTES = 180;

/** What one event of eating or drinking does to the curve. */
export interface EventTrace {
  readonly eventId: string;
  readonly lowestPh: number;
  readonly lowestAtMinute: number;
  /** When the plaque is back within 0.2 of rest; null where something else is eaten before, or the day ends. */
  readonly backAtMinute: number | null;
}

export type MinutesByLine = Readonly<Record<AcidLineId, number>>;

/** Minutes of the day under each line. */
export function minutesByLine(curve: DayCurve, lines: readonly AcidLine[]): MinutesByLine {
  const minutes = minutesBelowEach(
    curve,
    lines.map(({ ph }) => ph),
  );
  return Object.fromEntries(lines.map(({ id }, i) => [id, minutes[i]])) as Record<AcidLineId, number>;
}

/** Integral of the concentration of hydrogen ions over the day, µmol·min/L. */
export function acidArea({ stepMinutes, stepPh }: Pick<DayCurve, 'stepMinutes' | 'stepPh'>): number {
  let area = 0;
  for (let i = 1; i < stepMinutes.length; i += 1) {
    area += ((stepMinutes[i]! - stepMinutes[i - 1]!) * (10 ** (MICROMOL - stepPh[i]!) + 10 ** (MICROMOL - stepPh[i - 1]!))) / 2;
  }
  return area;
}

/** Stretches of the day under a line, to the minute: what a strip draws. */
export function listAcidStretches({ ph }: Pick<DayCurve, 'ph'>, linePh: number): readonly Span[] {
  const spans: { from: number; to: number }[] = [];
  let from: number | undefined;
  for (let minute = 0; minute < ph.length; minute += 1) {
    const isBelow = ph[minute]! < linePh;
    if (isBelow && from === undefined) from = minute === 0 ? 0 : minute - 1 + shareAt(ph, minute, linePh);
    if (!isBelow && from !== undefined) {
      spans.push({ from, to: minute - 1 + shareAt(ph, minute, linePh) });
      from = undefined;
    }
  }
  if (from !== undefined) spans.push({ from, to: ph.length - 1 });
  return spans;
}

/** Where between the minute before and this one the line is met. */
function shareAt(ph: Float64Array, minute: number, linePh: number): number {
  return (linePh - ph[minute - 1]!) / (ph[minute]! - ph[minute - 1]!);
}

/** For each event of eating or drinking, in the order of the day: how low the plaque gets before the next one, and when it is back. */
export function traceEvents(day: AcidDay, { ph }: Pick<DayCurve, 'ph'>): readonly EventTrace[] {
  const eaten = day.events.filter(({ kind }) => kind === 'eating').sort((a, b) => a.startMinute - b.startMinute);
  const atRest = Math.max(...eaten.map(({ startMinute }) => ph[Math.floor(startMinute)]!));
  return eaten.map((event, i) => traceOf(event, eaten[i + 1], ph, atRest));
}

function traceOf(event: DayEvent, next: DayEvent | undefined, ph: Float64Array, atRest: number): EventTrace {
  const from = Math.floor(event.startMinute);
  const end = Math.floor(event.startMinute + event.minutes) + LOOK_MINUTES;
  const to = Math.min(Math.max(Math.floor(next?.startMinute ?? end), from + 1), end, ph.length - 1);
  let lowest = from;
  for (let minute = from; minute <= to; minute += 1) if (ph[minute]! < ph[lowest]!) lowest = minute;
  let back: number | null = null;
  for (let minute = Math.max(lowest, Math.ceil(event.startMinute + event.minutes)); minute <= to && back === null; minute += 1) {
    if (ph[minute]! >= atRest - BACK_WITHIN_PH) back = minute;
  }
  return { eventId: event.id, lowestPh: ph[lowest]!, lowestAtMinute: lowest, backAtMinute: back };
}
