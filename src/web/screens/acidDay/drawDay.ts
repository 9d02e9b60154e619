import { dayTables } from '../../../content/plaque/dayTables.ts';
import { type AcidLine, acidLines, findAcidSide, type MeasuredFluids } from '../../../core/plaque/day/acidLines.ts';
import { type EventTrace, listAcidStretches, type MinutesByLine, minutesByLine, traceEvents } from '../../../core/plaque/day/dayFigures.ts';
import { buildDayModel } from '../../../core/plaque/day/dayModel.ts';
import type { Span } from '../../../core/plaque/day/nightSpans.ts';
import { runDay } from '../../../core/plaque/day/runDay.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import type { DayCurve, Mouth } from '../../../core/plaque/types.ts';

export interface DayQuestion {
  readonly day: AcidDay;
  readonly mouth: Mouth;
  readonly measured: MeasuredFluids;
  readonly tolerancePh: number;
}

/** Everything that a picture of one day shows. */
export interface DrawnDay {
  /** At the tooth, one value for each minute from 0 to 1,440. */
  readonly ph: Float64Array;
  readonly lines: readonly AcidLine[];
  /** Below the line of saliva. */
  readonly stretches: readonly Span[];
  readonly minutes: MinutesByLine;
  readonly traces: readonly EventTrace[];
}

/**
 * Works a day out for its picture.
 * @param previous  an earlier curve: what both days have in common from their start is not computed again
 * @throws RangeError naming the field of the day or the mouth
 */
export function drawDay(
  { day, mouth, measured, tolerancePh }: DayQuestion,
  previous?: DayCurve,
): { readonly drawn: DrawnDay; readonly curve: DayCurve } {
  const curve = runDay(day, buildDayModel(mouth, dayTables), dayTables.foods, { tolerancePh, ...(previous && { previous }) });
  const lines = acidLines(dayTables, measured);
  const drawn = {
    ph: curve.ph,
    lines,
    stretches: listAcidStretches(curve, findAcidSide(lines).ph),
    minutes: minutesByLine(curve, lines),
    traces: traceEvents(day, curve),
  };
  return { drawn, curve };
}
