import type { FoodLimit } from '../regimen/types.ts';
import { dietSuggestionAllowed } from './dietSuggestionAllowed.ts';
import type { LeafletGoal } from './leafletTable.ts';
import type { Catalog, Say } from './sayMessage.ts';

/** What the choice of goals looks at. */
export interface GoalContext {
  readonly ageYears: number;
  readonly diet: Pick<FoodLimit, 'allowed'>;
  readonly goals: readonly LeafletGoal[];
  readonly say: Say;
  /** Of every language, so that a suggestion saved as its words is known again after the language was changed. */
  readonly catalogs: readonly Catalog[];
}

/** The goals that may be offered to this person, in the order of the table, with their words. For the page where goals are agreed. */
export function listAllowedGoals(context: GoalContext): readonly (LeafletGoal & { readonly text: string })[] {
  return context.goals
    .filter((goal) => fitsAge(goal, context.ageYears) && dietSuggestionAllowed(context.diet, goal.family))
    .map((goal) => ({ ...goal, text: textOf(goal, context) }));
}

/**
 * The words for what was agreed: a goal id in the reader's language, or the professional's own words as typed. A goal about food
 * that this person must not be given is replaced by what to do afterwards, with whom to ask.
 * @param agreed  goal id, a goal's words in any language, or own words; undefined or blank = nothing recorded
 * @returns       undefined when nothing was recorded
 */
export function sayGoal(agreed: string | undefined, context: GoalContext): string | undefined {
  const typed = agreed?.trim();
  if (typed === undefined || typed === '') return undefined;
  const goal = context.goals.find(({ id }) => id === typed || context.catalogs.some((catalog) => catalog[`goal.${id}`] === typed));
  if (goal === undefined) return typed;
  return dietSuggestionAllowed(context.diet, goal.family) ? textOf(goal, context) : suggestAboutFood(context);
}

/** The suggestion made when food is a need and nothing was agreed: the furthest that this person may be given. */
export function suggestAboutFood(context: GoalContext): string | undefined {
  const allowed = listAllowedGoals(context);
  const first = (['food', 'bottle-or-cup', 'afterwards'] as const)
    .map((family) => allowed.find((goal) => goal.family === family))
    .find((goal) => goal !== undefined);
  return first?.text;
}

/** Where nothing about food may be said, whom to ask stands after what to do afterwards. */
function textOf(goal: LeafletGoal, { diet, say }: GoalContext): string {
  const text = say(`goal.${goal.id}`);
  return goal.family === 'afterwards' && diet.allowed === 'after-only' ? `${text} ${say('askBeforeFood')}` : text;
}

function fitsAge({ fromAgeYears = 0, belowAgeYears = Number.POSITIVE_INFINITY }: LeafletGoal, ageYears: number): boolean {
  return ageYears >= fromAgeYears && ageYears < belowAgeYears;
}
