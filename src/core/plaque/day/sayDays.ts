import type { DayBand, Interval } from './dayBand.ts';
import { type DayLanguage, dayWords, fillWords } from './dayWords.ts';
import type { EventCost } from './eventCosts.ts';
import { type EventNames, inSentence } from './nameOfEvent.ts';
import { whenNearLine } from './restDay.ts';
import { sayAtLeast, sayHeadline, sayRoughly } from './sayDay.ts';
import type { AcidDay, EatingEvent, Food, Portion } from './types.ts';

/** One described day with what the model says of it. */
export interface SaidDay {
  readonly day: AcidDay;
  /** On the acid side, by the usual values. */
  readonly minutes: number;
  readonly band: Interval;
  readonly atRest: DayBand['atRest'];
  readonly costs: readonly EventCost[];
}

interface Habit {
  readonly name: string;
  readonly onDays: number;
  readonly minutes: number;
}

/** Less than this is not told as a cost: figures are rounded to ten. */
const LEAST_COST_MINUTES = 10;
/** Something comes back from the second day on. */
const LEAST_DAYS = 2;

/**
 * One sentence or two over one to seven described days: the range from the lowest of their ranges to the highest, and what comes back most
 * often between meals among what costs time. Meals come back by themselves, and are not named. Where plaque lies near the line by itself on
 * any of the days, all are told by what eating adds.
 */
export function sayDays(days: readonly SaidDay[], foods: ReadonlyMap<string, Food>, language: DayLanguage, names: EventNames): string {
  const [only, ...others] = days;
  if (!only) return '';
  if (others.length === 0) return sayHeadline({ ...only, foods }, language, names);
  const habit = findHabit(days, foods, language);
  const { recurs } = dayWords[language];
  return [sayRange(days, language), habit && fillWords(recurs, habit.name, habit.onDays, days.length)].filter(Boolean).join(' ');
}

function sayRange(days: readonly SaidDay[], language: DayLanguage): string {
  const words = dayWords[language];
  const near = days.map(({ atRest }) => whenNearLine(atRest)).filter((when) => when !== null);
  if (near.length === 0) return fillWords(words.overDays, days.length, sayRoughly(spanOf(days.map(({ band }) => band)), language));
  const added = spanOf(days.map(({ atRest }) => atRest.addedByFood));
  const least = sayAtLeast(added, language);
  const adds = least
    ? fillWords(words.overDaysAtLeast, days.length, least)
    : fillWords(words.overDaysNearLine, days.length, sayRoughly(added, language));
  return `${words.nearLine[near.includes('day-and-night') ? 'day-and-night' : 'night']} ${adds}`;
}

const spanOf = (ranges: readonly Interval[]): Interval => ({
  low: Math.min(...ranges.map(({ low }) => low)),
  high: Math.max(...ranges.map(({ high }) => high)),
});

/** Between meals, the same thing with most sugar in it, taken the same way, that costs time: on the most days, then with most minutes. */
function findHabit(days: readonly SaidDay[], foods: ReadonlyMap<string, Food>, language: DayLanguage): Habit | undefined {
  const habits = new Map<string, { readonly name: string; readonly on: Set<number>; minutes: number }>();
  days.forEach(({ day, costs }, i) => {
    for (const event of day.events) {
      const cost = costs.find(({ eventId }) => eventId === event.id)?.minutes ?? 0;
      if (event.kind !== 'eating' || event.occasion !== 'between-meals' || cost < LEAST_COST_MINUTES) continue;
      const name = nameOfHabit(event, foods, language);
      const habit = habits.get(name) ?? { name, on: new Set(), minutes: 0 };
      habit.on.add(i);
      habit.minutes += cost;
      habits.set(name, habit);
    }
  });
  const [first] = [...habits.values()]
    .map(({ name, on, minutes }) => ({ name, onDays: on.size, minutes }))
    .sort((a, b) => b.onDays - a.onDays || b.minutes - a.minutes);
  return first && first.onDays >= LEAST_DAYS ? first : undefined;
}

/** By what was taken, not by the word on the event: "break" is another thing every day. */
function nameOfHabit({ portions, sipped }: EatingEvent, foods: ReadonlyMap<string, Food>, language: DayLanguage): string {
  const sugarOf = (portion: Portion) =>
    portion.amount * ('typed' in portion ? portion.typed.sugarsGPer100 : (foods.get(portion.food)?.sugarsGPer100 ?? 0));
  const [sweetest] = [...portions].sort((a, b) => sugarOf(b) - sugarOf(a));
  if (!sweetest) return '';
  const name = 'typed' in sweetest ? sweetest.typed.name : (foods.get(sweetest.food)?.name[language] ?? sweetest.food);
  return sipped ? fillWords(dayWords[language].sipped, inSentence(name)) : inSentence(name);
}
