import { minutesBelow } from '../model/readCurve.ts';
import type { DayCurve } from '../types.ts';
import { BAND_TOLERANCE_PH, type Interval, intervalOf } from './dayBand.ts';
import type { DayModel } from './dayModel.ts';
import { applyMoves, type DayMove } from './dayMoves.ts';
import { runDay } from './runDay.ts';
import { type DayChange, finish } from './searchChanges.ts';
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
export function changeGains(day: AcidDay, changes: readonly DayChange[], context: GainContext): readonly ChangeGain[] {
  const ask = gainsOf(day, context);
  return changes.map(({ moves }, i) => finish(ask(moves, i + 1)));
}

/** The same, change by change, giving control back after each draw: the day as it is is worked out only once. */
export function gainsOf(day: AcidDay, { models, foods, linePh }: GainContext) {
  const options = { tolerancePh: BAND_TOLERANCE_PH };
  const curves: DayCurve[] = [];
  return function* (moves: readonly DayMove[], rank: number): Generator<void, ChangeGain> {
    const changed = applyMoves(day, moves);
    const fewer = new Float64Array(models.length);
    for (const [i, model] of models.entries()) {
      curves[i] ??= runDay(day, model, foods, options);
      const previous = curves[i];
      fewer[i] = minutesBelow(previous, linePh) - minutesBelow(runDay(changed, model, foods, { ...options, previous }), linePh);
      yield;
    }
    const interval = intervalOf(fewer);
    return { moves, rank, isAsked: true, ...(interval.low > 0 && { fewerMinutes: interval }) };
  };
}
