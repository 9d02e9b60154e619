// biome-ignore-all lint/style/noNonNullAssertion: indexes of a numeric loop
import { minutesBelow } from '../model/readCurve.ts';
import { BAND_TOLERANCE_PH, type Interval, intervalOf } from './dayBand.ts';
import type { DayModel } from './dayModel.ts';
import { applyMoves, type DayMove } from './dayMoves.ts';
import { runDay } from './runDay.ts';
import type { DayChange } from './searchChanges.ts';
import type { AcidDay, Food } from './types.ts';

/** A change with what may be said of it: minutes only where the band of the difference is all on one side, else its rank. */
export interface ChangeGain {
  readonly moves: readonly DayMove[];
  /** 1 = shortens most, by the usual values. */
  readonly rank: number;
  /** Whether the draws were asked about this change at all. */
  readonly isAsked: boolean;
  /** Fewer minutes on the acid side; absent where some of the draws see no gain. */
  readonly fewerMinutes?: Interval | undefined;
}

export interface GainContext {
  /** The same draws for the day as it is and for the changed one. */
  readonly models: readonly DayModel[];
  readonly foods: ReadonlyMap<string, Food>;
  readonly linePh: number;
}

/**
 * What changes gain, each draw of the model asked about the day with and without the change: what is uncertain in both falls out.
 * @param changes  best first, as a search gives them
 */
export function changeGains(day: AcidDay, changes: readonly DayChange[], { models, foods, linePh }: GainContext): readonly ChangeGain[] {
  const options = { tolerancePh: BAND_TOLERANCE_PH };
  const curves = models.map((model) => runDay(day, model, foods, options));
  const now = curves.map((curve) => minutesBelow(curve, linePh));
  return changes.map(({ moves }, i) => {
    const changed = applyMoves(day, moves);
    const fewer = models.map(
      (model, k) => now[k]! - minutesBelow(runDay(changed, model, foods, { ...options, previous: curves[k] }), linePh),
    );
    const interval = intervalOf(Float64Array.from(fewer));
    return { moves, rank: i + 1, isAsked: true, ...(interval.low > 0 && { fewerMinutes: interval }) };
  });
}
