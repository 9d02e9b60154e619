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
  /** While something is dragged: worked out a little less closely, by the picture before it. */
  readonly isLive: boolean;
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

/** Target of the error of one step, pH. */
const LIVE_TOLERANCE_PH = 0.02;
const TOLERANCE_PH = 0.01;

/** Curves of earlier pictures in the same place. */
export interface KnownCurves {
  /** The last one that was worked out alone. */
  readonly exact?: DayCurve | undefined;
  /** The last one of all. */
  readonly last?: DayCurve | undefined;
}

/**
 * Works a day out for its picture. While something is dragged, what the hand does not reach is taken from the picture before; once it rests
 * the day is worked out alone, so that it is the same whichever way it went there.
 * @throws RangeError naming the field of the day or the mouth
 */
export function drawDay(
  { day, mouth, measured, isLive }: DayQuestion,
  { exact, last }: KnownCurves = {},
): { readonly drawn: DrawnDay; readonly curve: DayCurve } {
  const how = isLive ? { tolerancePh: LIVE_TOLERANCE_PH, follow: last } : { tolerancePh: TOLERANCE_PH, previous: exact };
  const curve = runDay(day, buildDayModel(mouth, dayTables), dayTables.foods, how);
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
