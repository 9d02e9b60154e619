import { DAY_MINUTES } from './nightSpans.ts';
import type { AcidDay, DayEvent, EatingEvent } from './types.ts';

/** One change of one event that a person could make. */
export type DayMove =
  | { readonly kind: 'drop'; readonly eventId: string }
  | { readonly kind: 'join'; readonly eventId: string; readonly mealId: string }
  | { readonly kind: 'water'; readonly eventId: string }
  | { readonly kind: 'gum'; readonly eventId: string };
export type DayMoveKind = DayMove['kind'];

/** Minutes of gum after eating; 10 to 20 are advised. */
const GUM_MINUTES = 15;
const GUM_FROM_MINUTES = 1;

/** Names a move, for comparing and for sorting. */
export const moveKey = (move: DayMove): string => `${move.eventId} ${move.kind}`;

/** The day after these moves: what changes food first, gum after what is then left. @throws RangeError for an event that is not there */
export function applyMoves(day: AcidDay, moves: readonly DayMove[]): AcidDay {
  const ordered = [...moves].sort((a, b) => Number(a.kind === 'gum') - Number(b.kind === 'gum'));
  return ordered.reduce(applyMove, day);
}

function applyMove(day: AcidDay, move: DayMove): AcidDay {
  const event = getEating(day, move.eventId);
  switch (move.kind) {
    case 'drop':
      return { ...day, events: day.events.filter(({ id }) => id !== event.id) };
    case 'join':
      return joinMeal(day, event, getEating(day, move.mealId));
    case 'water':
      return { ...day, events: day.events.map((other) => (other.id === event.id ? toWater(event) : other)) };
    case 'gum':
      return { ...day, events: [...day.events, gumAfter(event)] };
  }
}

function getEating(day: AcidDay, id: string): EatingEvent {
  const event = day.events.find((one) => one.id === id);
  if (event?.kind !== 'eating') throw new RangeError(`eventId must name an event of eating: ${id}`);
  return event;
}

/** What is sipped is drunk with the meal in the meal's own time; what is eaten makes the meal longer. */
function joinMeal(day: AcidDay, event: EatingEvent, meal: EatingEvent): AcidDay {
  const minutes = event.sipped ? meal.minutes : meal.minutes + event.minutes;
  const joined: EatingEvent = { ...meal, minutes, portions: [...meal.portions, ...event.portions] };
  return { ...day, events: day.events.flatMap((one) => (one.id === event.id ? [] : one.id === meal.id ? [joined] : [one])) };
}

/** Its row in the table of foods, so that it has a name in every language. */
const WATER = 'tap-water';

/** As much water, in the same time. The person's word for what she drank before goes with it. */
function toWater({ label: _, ...event }: EatingEvent): EatingEvent {
  const amount = event.portions.reduce((total, portion) => total + portion.amount, 0);
  return { ...event, portions: [{ food: WATER, amount }] };
}

function gumAfter(event: EatingEvent): DayEvent {
  const startMinute = Math.min(event.startMinute + event.minutes + GUM_FROM_MINUTES, DAY_MINUTES - 1);
  return { id: `${event.id}-gum`, kind: 'gum', startMinute, minutes: GUM_MINUTES };
}
