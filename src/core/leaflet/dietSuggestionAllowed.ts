import type { FoodLimit } from '../regimen/types.ts';
import type { LeafletGoal } from './leafletTable.ts';

/**
 * Whether a suggestion of this family may be made to a person. What to do after eating may always be said; what a sweet bottle or
 * cup holds may be said where only a young child's food is protected; what or when to eat only where nothing stands against it.
 * The limit itself (young child, insulin or another medicine that lowers glucose, eating disorder, underweight, sickness of
 * pregnancy, tube or supplement feeding, safety check unanswered) is part of the plan.
 */
export function dietSuggestionAllowed(limit: Pick<FoodLimit, 'allowed'>, family: LeafletGoal['family']): boolean {
  switch (family) {
    case 'food':
      return limit.allowed === 'any';
    case 'bottle-or-cup':
      return limit.allowed !== 'after-only';
    case 'care':
    case 'afterwards':
      return true;
  }
}
