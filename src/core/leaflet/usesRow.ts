import { dayDrawing } from '../regimen/dayStrip/dayDrawing.ts';
import type { DayStrip, EatingTime, RhythmId } from '../regimen/dayStrip/types.ts';
import type { Say } from './sayMessage.ts';
import type { StripRow, StripSpan } from './types.ts';

interface UsesRowInput {
  readonly strip: DayStrip;
  readonly say: Say;
  /** The word of an item. */
  readonly wordOf: (shelfItemId: string) => string;
  /** Between two words at one mark. */
  readonly comma?: string | undefined;
  /** With the words of a mark, its time; absent = the words alone. */
  readonly sayTime?: ((minute: number) => string) | undefined;
  /** Where the plaque is on the acid side in the model; absent = not shown. */
  readonly acid?: readonly StripSpan[] | undefined;
  /** Whether the wait of an item is shown; absent = all are. */
  readonly showsWait?: ((shelfItemId: string) => boolean) | undefined;
}

/** What to use when, as a row that can be drawn: uses, waits, meals, school or work, getting up and bed. */
export function usesRow({ strip, say, wordOf, comma = ', ', sayTime, acid = [], showsWait = () => true }: UsesRowInput): StripRow {
  const { rhythm } = strip;
  const { night, away, waits, eaten, uses } = dayDrawing(strip);
  const awayName = say(rhythm.rhythm === 'school' ? 'tick.school' : 'tick.work');
  return {
    night,
    acid,
    eaten: eaten.map(({ from, to, eating }) => ({ from, to, name: nameOfMeal(eating, say) })),
    uses: uses.map(({ minute, shelfItemIds }) => ({
      minute,
      name: [shelfItemIds.map(wordOf).join(comma), sayTime?.(minute)].filter(Boolean).join(' '),
    })),
    waits: waits.filter(({ shelfItemId }) => showsWait(shelfItemId)).map(({ from, to }) => ({ from, to })),
    // What runs over midnight is named once.
    away: away.map((span, i) => ({ ...span, name: i === 0 ? awayName : '' })),
    ticks: [
      { minute: rhythm.upMinute, name: say('tick.up') },
      { minute: rhythm.bedMinute, name: say('tick.bed') },
    ],
  };
}

const nameOfMeal = ({ meal, name }: EatingTime, say: Say): string => (meal === undefined ? name : say(`meal.${meal}`));

/** Which day is drawn, and on what ground: as told, as named, or taken for usual because nobody was asked. */
export function sayWhoseDay(
  { basis, rhythm = 'home' }: { readonly basis: DayStrip['rhythm']['basis']; readonly rhythm?: RhythmId | undefined },
  say: Say,
): string {
  if (basis === 'told') return say('uses.told');
  return say(basis === 'named' ? 'uses.named' : 'uses.assumed', { day: say(`rhythm.${rhythm}`) });
}
