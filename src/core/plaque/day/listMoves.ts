import type { DayLimits } from './dayLimits.ts';
import { applyMoves, type DayMove, type DayMoveKind } from './dayMoves.ts';
import { findDayProblems } from './findDayProblems.ts';
import type { AcidDay, EatingEvent, Food, Portion } from './types.ts';

export interface MoveContext {
  readonly foods: ReadonlyMap<string, Food>;
  readonly limits: DayLimits;
  /** Kinds of change that the person does not want at all. */
  readonly unwanted?: readonly DayMoveKind[] | undefined;
}

/** Under this, what is drunk is not called sweet. */
const SWEET_FROM_G_PER_100 = 1;

/**
 * Every single change that may be suggested for a day, in the order of its events. Never of an event that she keeps; a meal is never dropped
 * or moved by anybody. What may be said about food and gum at all stands in the limits.
 * @param day  checked before (`requireDay`)
 */
export function listMoves(day: AcidDay, { foods, limits, unwanted = [] }: MoveContext): readonly DayMove[] {
  const moves = day.events.filter((event) => event.kind === 'eating').flatMap((event) => movesOf(event, day, { foods, limits }));
  return moves.filter((move) => !unwanted.includes(move.kind) && isPossible(day, [move], foods));
}

/** Whether the day after these moves can be lived: nothing overlaps, gum is not chewed asleep. */
export function isPossible(day: AcidDay, moves: readonly DayMove[], foods: ReadonlyMap<string, Food>): boolean {
  return findDayProblems(applyMoves(day, moves), foods).length === 0;
}

function movesOf(event: EatingEvent, day: AcidDay, { foods, limits }: Omit<MoveContext, 'unwanted'>): DayMove[] {
  if (event.keep) return [];
  const eventId = event.id;
  const moves: DayMove[] = [];
  if (limits.food.allowed === 'any' && event.occasion === 'between-meals') {
    moves.push({ kind: 'drop', eventId });
    const meal = findNearestMeal(event, day);
    if (meal) moves.push({ kind: 'join', eventId, mealId: meal.id });
  }
  if (mayBecomeWater(event, limits, foods)) moves.push({ kind: 'water', eventId });
  if (limits.gum.allowed && hasSugar(event, foods)) moves.push({ kind: 'gum', eventId });
  return moves;
}

/**
 * A sweet drink between meals. Where only a sweet bottle or cup may be spoken of: in a bottle or cup, and every drink in it known from the
 * table as no milk and nothing that takes its place, since a feed is never replaced.
 */
function mayBecomeWater(event: EatingEvent, { food }: DayLimits, foods: ReadonlyMap<string, Food>): boolean {
  if (food.allowed === 'after-only' || event.occasion !== 'between-meals') return false;
  if (!event.portions.every((portion) => isSweetDrink(portion, foods))) return false;
  if (food.allowed === 'any') return true;
  return event.inBottleOrCup === true && event.portions.every((portion) => 'food' in portion);
}

function isSweetDrink(portion: Portion, foods: ReadonlyMap<string, Food>): boolean {
  const food = 'typed' in portion ? portion.typed : foods.get(portion.food);
  if (food?.unit !== 'mL' || food.sugarsGPer100 < SWEET_FROM_G_PER_100) return false;
  return !('isMilk' in food && food.isMilk);
}

function hasSugar({ portions }: EatingEvent, foods: ReadonlyMap<string, Food>): boolean {
  return portions.some((portion) => ('typed' in portion ? portion.typed : foods.get(portion.food))?.sugarsGPer100 !== 0);
}

/** By the time between them; the earlier of two as near. A meal that she keeps as it is takes nothing in. */
function findNearestMeal(event: EatingEvent, { events }: AcidDay): EatingEvent | undefined {
  const meals = events.filter((one) => one.kind === 'eating').filter((one) => one.occasion === 'meal' && one.id !== event.id && !one.keep);
  const gapTo = (meal: EatingEvent) =>
    Math.max(meal.startMinute - event.startMinute - event.minutes, event.startMinute - meal.startMinute - meal.minutes, 0);
  return meals.sort((a, b) => gapTo(a) - gapTo(b) || a.startMinute - b.startMinute)[0];
}
