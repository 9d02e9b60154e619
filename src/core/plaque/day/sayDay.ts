import type { ChangeGain } from './changeGains.ts';
import type { DayBand, Interval } from './dayBand.ts';
import type { DayMove } from './dayMoves.ts';
import { type DayLanguage, dayWords, fillWords } from './dayWords.ts';
import type { EventCost } from './eventCosts.ts';
import { type EventNames, nameOfEvent } from './nameOfEvent.ts';
import { whenNearLine } from './restDay.ts';
import type { AcidDay, DayEvent, Food } from './types.ts';

const ROUND_TO_MINUTES = 10;
const HOUR = 60;
/** From here on time is told in hours. */
const HOURS_FROM_MINUTES = 120;
/** An event is named as most of it from half of all minutes on. */
const MOST_SHARE = 0.5;
/** A quarter of a day: a range wider than this says next to nothing, and its lower end is told alone. */
const WIDEST_MINUTES = 360;

export const DAY_CAUTION = dayWords.en.caution;

/** A range of minutes rounded to ten: "2 to 3 hours", "40 to 90 minutes", "about 20 minutes", "less than 10 minutes". */
export function sayMinutesRange({ low, high }: Interval, language: DayLanguage = 'en'): string {
  const words = dayWords[language];
  const [from, to] = [roundToTen(low), roundToTen(high)];
  if (to === 0) return fillWords(words.lessThan, sayMinutes(ROUND_TO_MINUTES, language));
  if (from === 0) return fillWords(words.upTo, sayMinutes(to, language));
  if (from === to) return fillWords(words.about, sayMinutes(to, language));
  if (to < HOURS_FROM_MINUTES) return fillWords(words.minutes, fillWords(words.range, from, to));
  const bothWhole = from % HOUR === 0 && to % HOUR === 0;
  return bothWhole
    ? fillWords(words.hours, fillWords(words.range, from / HOUR, to / HOUR))
    : fillWords(words.range, sayMinutes(from, language), sayMinutes(to, language));
}

const roundToTen = (minutes: number): number => Math.round(minutes / ROUND_TO_MINUTES) * ROUND_TO_MINUTES;

/** "40 minutes", "2 hours", "2 h 30 min". */
function sayMinutes(minutes: number, language: DayLanguage): string {
  const words = dayWords[language];
  if (minutes < HOURS_FROM_MINUTES) return fillWords(words.minutes, minutes);
  const rest = minutes % HOUR;
  return rest === 0 ? fillWords(words.hours, minutes / HOUR) : fillWords(words.both, Math.floor(minutes / HOUR), rest);
}

/** "roughly 2 to 3 hours"; what is loose already ("about", "up to") needs no second word for it. */
export function sayRoughly(range: Interval, language: DayLanguage): string {
  const said = sayMinutesRange(range, language);
  const [from, to] = [roundToTen(range.low), roundToTen(range.high)];
  return from > 0 && from !== to ? fillWords(dayWords[language].roughly, said) : said;
}

/** Where a range is too wide to say anything, its lower end: "5 h 30 min"; undefined where the range may be told. */
export function sayAtLeast({ low, high }: Interval, language: DayLanguage): string | undefined {
  const least = roundToTen(low);
  return high - low > WIDEST_MINUTES && least > 0 ? sayMinutes(least, language) : undefined;
}

/** The person's own word for an event, or what was taken. */
export const sayEvent = (event: DayEvent, foods: ReadonlyMap<string, Food>): string =>
  nameOfEvent(event, { foods, language: 'en', names: {} });

export interface DaySentenceInput {
  readonly day: AcidDay;
  readonly foods: ReadonlyMap<string, Food>;
  /** Minutes on the acid side by the usual values. */
  readonly minutes: number;
  /** Of the day as it is, on the acid side, and of the same day with nothing eaten. */
  readonly band: Interval;
  readonly atRest: DayBand['atRest'];
  readonly costs: readonly EventCost[];
  /** Best first; only what may be suggested. */
  readonly gains: readonly ChangeGain[];
}

/** The headline of a day and what goes with it, in the words that are honest. */
export interface DaySentences {
  /** "In the model, roughly 2 to 3 hours a day on the acid side, mostly the sipped cola." */
  readonly headline: string;
  /** "Having it with lunch would shorten that most." Absent where nothing may be suggested or nothing clearly helps. */
  readonly change?: string | undefined;
  readonly caution: string;
}

export function sayDay(input: DaySentenceInput): DaySentences {
  const { day, foods, gains } = input;
  const best = gains.find(({ moves, fewerMinutes }) => moves.length === 1 && fewerMinutes !== undefined);
  const move = best?.moves[0];
  return {
    headline: sayHeadline(input, 'en', {}),
    change: move && `${sayMove(move, day, foods)} would shorten that most.`,
    caution: DAY_CAUTION,
  };
}

/**
 * How long on the acid side, as a range. Where plaque lies near the line even with nothing eaten, hours in all would be a matter of where
 * exactly it lies: then it says so, and tells what eating and drinking add, each draw of the model against itself.
 */
export function sayHeadline(
  { day, foods, minutes, band, atRest, costs }: Omit<DaySentenceInput, 'gains'>,
  language: DayLanguage,
  names: EventNames,
): string {
  const words = dayWords[language];
  const [dearest] = costs;
  const event = day.events.find(({ id }) => id === dearest?.eventId);
  const share = dearest && minutes > 0 ? dearest.minutes / minutes : 0;
  const mostly = event && share >= MOST_SHARE ? fillWords(words.mostly, nameOfEvent(event, { foods, language, names })) : '';
  const near = whenNearLine(atRest);
  if (near === null) return fillWords(words.onAcidSide, sayRoughly(band, language), mostly);
  const least = sayAtLeast(atRest.addedByFood, language);
  const adds = least
    ? fillWords(words.foodAddsAtLeast, least, mostly)
    : fillWords(words.foodAdds, sayRoughly(atRest.addedByFood, language), mostly);
  return `${words.nearLine[near]} ${adds}`;
}

/** A move as the beginning of a sentence: "Having biscuits with lunch". */
export function sayMove(move: DayMove, day: AcidDay, foods: ReadonlyMap<string, Food>): string {
  const nameOf = (id: string) => {
    const event = day.events.find((one) => one.id === id);
    return event ? sayEvent(event, foods) : id;
  };
  const name = nameOf(move.eventId);
  switch (move.kind) {
    case 'drop':
      return `Leaving out ${name}`;
    case 'join':
      return `Having ${name} with ${nameOf(move.mealId)}`;
    case 'water':
      return `Water instead of ${name}`;
    case 'gum':
      return `Sugar-free gum after ${name}`;
  }
}

/** A gain as it may be said: minutes where the band allows, else its place. */
export function sayGain({ rank, fewerMinutes, isAsked }: ChangeGain): string {
  if (fewerMinutes) return `in the model, ${sayMinutesRange(fewerMinutes)} less a day`;
  return isAsked ? `place ${rank}; the model cannot tell how much` : `place ${rank}`;
}
