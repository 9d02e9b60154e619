import type { ChangeGain } from './changeGains.ts';
import type { Interval } from './dayBand.ts';
import type { DayMove } from './dayMoves.ts';
import type { EventCost } from './eventCosts.ts';
import type { AcidDay, DayEvent, Food } from './types.ts';

const ROUND_TO_MINUTES = 10;
const HOUR = 60;
/** From here on time is told in hours. */
const HOURS_FROM_MINUTES = 120;
/** An event is named as most of it from half of all minutes on. */
const MOST_SHARE = 0.5;

export const DAY_CAUTION = 'This compares days; it does not measure teeth.';

/** A range of minutes rounded to ten: "2 to 3 hours", "40 to 90 minutes", "about 20 minutes", "less than 10 minutes". */
export function sayMinutesRange({ low, high }: Interval): string {
  const [from, to] = [roundToTen(low), roundToTen(high)];
  if (to === 0) return `less than ${ROUND_TO_MINUTES} minutes`;
  if (from === 0) return `up to ${sayMinutes(to)}`;
  if (from === to) return `about ${sayMinutes(to)}`;
  if (to < HOURS_FROM_MINUTES) return `${from} to ${to} minutes`;
  const bothWhole = from % HOUR === 0 && to % HOUR === 0;
  return bothWhole ? `${from / HOUR} to ${to / HOUR} hours` : `${sayMinutes(from)} to ${sayMinutes(to)}`;
}

const roundToTen = (minutes: number): number => Math.round(minutes / ROUND_TO_MINUTES) * ROUND_TO_MINUTES;

/** "40 minutes", "2 hours", "2 h 30 min". */
function sayMinutes(minutes: number): string {
  if (minutes < HOURS_FROM_MINUTES) return `${minutes} minutes`;
  const rest = minutes % HOUR;
  return rest === 0 ? `${minutes / HOUR} hours` : `${Math.floor(minutes / HOUR)} h ${rest} min`;
}

/** The person's own word for an event, or what was taken. */
export function sayEvent(event: DayEvent, foods: ReadonlyMap<string, Food>): string {
  const said = inSentence(event.label?.trim() ?? '');
  if (event.kind !== 'eating') return said || event.kind;
  const the = event.sipped ? 'the sipped ' : '';
  if (said !== '') return `${the}${said}`;
  const names = event.portions.map((portion) =>
    'typed' in portion ? portion.typed.name : (foods.get(portion.food)?.name.en ?? portion.food),
  );
  const [first = '', ...rest] = names;
  return `${the}${inSentence(first)}${rest.length > 0 ? ' and more' : ''}`;
}

/** A name inside a sentence; one that is written in capitals keeps them. */
const inSentence = (name: string): string => (/^\p{Lu}{2}/u.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1));

export interface DaySentenceInput {
  readonly day: AcidDay;
  readonly foods: ReadonlyMap<string, Food>;
  /** Minutes on the acid side: by the usual values, and the band. */
  readonly minutes: number;
  readonly band: Interval;
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

export function sayDay({ day, foods, minutes, band, costs, gains }: DaySentenceInput): DaySentences {
  const [dearest] = costs;
  const event = day.events.find(({ id }) => id === dearest?.eventId);
  const share = dearest && minutes > 0 ? dearest.minutes / minutes : 0;
  const mostly = event && share >= MOST_SHARE ? `, mostly ${sayEvent(event, foods)}` : '';
  const best = gains.find(({ moves, fewerMinutes }) => moves.length === 1 && fewerMinutes !== undefined);
  const move = best?.moves[0];
  return {
    headline: `In the model, roughly ${sayMinutesRange(band)} a day on the acid side${mostly}.`,
    change: move && `${sayMove(move, day, foods)} would shorten that most.`,
    caution: DAY_CAUTION,
  };
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
