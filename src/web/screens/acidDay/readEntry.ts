import { foods } from '../../../content/foods.ts';
import { readClockTime } from '../../../core/day/clockTime.ts';
import { searchFoods } from '../../../core/plaque/day/searchFoods.ts';
import type { AcidDay, DayEvent, EatingEvent, Food } from '../../../core/plaque/day/types.ts';
import { freshId } from './editDay.ts';

/** What can be put into a day besides food. */
export const OTHER_THINGS = [
  { id: 'brushing', name: 'Brushing', words: 'brush teeth', minutes: 2 },
  { id: 'gum', name: 'Gum without sugar', words: 'chewing', minutes: 15 },
  { id: 'water', name: 'Water', words: 'drink', minutes: 2 },
  { id: 'cheese', name: 'Cheese, a piece at the end', words: 'after', minutes: 3 },
  { id: 'fluoride', name: 'Fluoride rinse', words: 'mouth', minutes: 1 },
  { id: 'nap', name: 'Nap', words: 'sleep', minutes: 60 },
] as const;
export type OtherThing = (typeof OTHER_THINGS)[number]['id'];

export interface TypedEntry {
  /** Minutes after midnight; undefined = none was typed. */
  readonly startMinute: number | undefined;
  readonly words: string;
}

/** "10:30 biscuit", "1030 biscuit", "9 pm cola", "biscuit". */
export function readTyped(typed: string): TypedEntry {
  const text = typed.trim();
  for (const pattern of [/^(\S+\s+[ap]\.?m\.?)(?:\s+|$)(.*)$/i, /^(\S+)(?:\s+|$)(.*)$/]) {
    const [, head, rest] = pattern.exec(text) ?? [];
    const time = head === undefined ? undefined : readClockTime(head);
    if (time !== undefined) return { startMinute: minuteOfTime(time), words: (rest ?? '').trim() };
  }
  return { startMinute: undefined, words: text };
}

/** "10:30" as minutes after midnight. */
export function minuteOfTime(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return 60 * hours + minutes;
}

export type Found =
  | { readonly kind: 'food'; readonly food: Food }
  | { readonly kind: 'other'; readonly id: OtherThing; readonly name: string };

const MOST_FOUND = 12;

/** What the typed words may mean: care first where its name begins so, then foods. */
export function findThings(words: string): readonly Found[] {
  const typed = words.toLowerCase();
  if (typed === '') return [];
  const other = OTHER_THINGS.filter((thing) =>
    `${thing.name} ${thing.words}`
      .toLowerCase()
      .split(/[\s,]+/)
      .some((word) => word.startsWith(typed)),
  );
  const eaten = searchFoods(words, foods).map((food) => ({ kind: 'food', food }) as const);
  return [...other.map(({ id, name }) => ({ kind: 'other', id, name }) as const), ...eaten].slice(0, MOST_FOUND);
}

const MEAL_FROM_MINUTES = 15;

/** An event as it usually is: the table's amount and minutes. What takes a quarter of an hour is taken for a meal, until somebody says otherwise. */
export function toEvent(found: Found, startMinute: number, day: AcidDay): DayEvent {
  const base = { id: freshId(day), startMinute };
  if (found.kind === 'food') return toEating(found.food, base);
  const minutes = OTHER_THINGS.find(({ id }) => id === found.id)?.minutes ?? 1;
  if (found.id === 'fluoride') return { ...base, minutes, kind: 'rinse', rinse: 'fluoride' };
  return { ...base, minutes, kind: found.id };
}

function toEating(food: Food, base: { readonly id: string; readonly startMinute: number }): EatingEvent {
  const minutes = food.usualMinutes;
  const occasion = minutes >= MEAL_FROM_MINUTES && food.unit === 'g' ? 'meal' : 'between-meals';
  return { ...base, kind: 'eating', occasion, minutes, portions: [{ food: food.id, amount: food.usualAmount }] };
}

/** The name under which a found thing stands in the list, with the sugars of the table. */
export const sayFound = (found: Found): string =>
  found.kind === 'food' ? `${found.food.name.en}, ${found.food.sugarsGPer100} g sugars in 100 ${found.food.unit}` : found.name;
