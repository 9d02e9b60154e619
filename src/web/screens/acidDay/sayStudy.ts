import { foodsById } from '../../../content/foods.ts';
import type { DayBand } from '../../../core/plaque/day/dayBand.ts';
import type { DayMove } from '../../../core/plaque/day/dayMoves.ts';
import { DAY_CAUTION, sayDay, sayGain, sayMove } from '../../../core/plaque/day/sayDay.ts';
import type { AcidDay } from '../../../core/plaque/day/types.ts';
import { sayDayChange } from '../../../core/visit/sayDayChange.ts';
import { joinWords, uncapitalise } from '../../format.ts';
import type { DrawnDay } from './drawDay.ts';
import type { DayStudy, TogetherGain } from './studyDay.ts';

export const CAUTION = DAY_CAUTION;

interface Told {
  readonly day: AcidDay;
  readonly drawn: DrawnDay;
  readonly study: Partial<DayStudy>;
}

/** The one sentence that leads, and what would shorten it most; null until the band is there. Never a figure without its range. */
export function sayTold({ day, drawn, study }: Told): { readonly headline: string; readonly change?: string | undefined } | null {
  const { bandTold, costs = [], gains = [] } = study;
  if (!bandTold) return null;
  return sayDay({
    day,
    foods: foodsById,
    minutes: drawn.minutes.saliva,
    band: bandTold.minutesBelow.saliva,
    atRest: bandTold.atRest,
    costs,
    gains,
  });
}

/** The changed day beside the one that was told; null until both bands are there. */
export function sayChanged({ bandTold, bandChanged, fewer = null, more = null }: Partial<DayStudy>): string | null {
  if (!bandTold || !bandChanged) return null;
  return sayDayChange(rangeOf(bandTold), rangeOf(bandChanged), { fewer, more });
}

const rangeOf = ({ minutesBelow, atRest }: DayBand) => ({ band: minutesBelow.saliva, atRest });

/** Two or three changes together, as one thing to do: "leaving out the biscuit and having the cola with lunch". */
export const sayMoves = (moves: readonly DayMove[], day: AcidDay): string =>
  joinWords(moves.map((move, i) => (i === 0 ? sayMove(move, day, foodsById) : uncapitalise(sayMove(move, day, foodsById)))));

const HOW_FOUND: Readonly<Record<TogetherGain['found'], string>> = {
  'every-pair': 'the best of all pairs',
  'best-moves': 'the best of the pairs that were tried; not every pair was',
  widened: 'the best three that were found; not every three were tried',
};

/** What may be said of changes made together: minutes where the band allows, else only how they were found. */
export function sayTogether({ gain, found }: TogetherGain): string {
  const how = HOW_FOUND[found];
  return gain.fewerMinutes ? `${sayGain(gain)}; ${how}` : `${how}; the model cannot tell how much`;
}
