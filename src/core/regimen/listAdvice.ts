import type { MouthReason } from '../visit/mouthReason.ts';
import type { Advice } from './tables.ts';
import type { AdviceLine, FoodLimit } from './types.ts';

/** The families of advice that a limit on food still lets through. */
const ALLOWED: Readonly<Record<FoodLimit['allowed'], readonly Advice['family'][]>> = {
  any: ['care', 'afterwards', 'bottle-or-cup', 'food'],
  'sweet-bottle-only': ['care', 'afterwards', 'bottle-or-cup'],
  'after-only': ['care', 'afterwards'],
};

/**
 * The advice that this mouth asks for. Where food may not be limited, advice about food is left out and, if any was, the line that says
 * whom to ask stands in its place.
 * @param noted  ids of appliances and conditions that are known today
 */
export function listAdvice({
  reasons,
  ageYears,
  noted,
  diet,
  table,
}: {
  readonly reasons: readonly MouthReason[];
  readonly ageYears: number;
  readonly noted: readonly string[];
  readonly diet: Pick<FoodLimit, 'allowed'>;
  readonly table: readonly Advice[];
}): readonly AdviceLine[] {
  const fitting = table.filter(
    ({ mouths, onlyWith, fromAgeYears = 0, belowAgeYears = Number.POSITIVE_INFINITY }) =>
      mouths.some((mouth) => reasons.includes(mouth)) &&
      (onlyWith?.some((id) => noted.includes(id)) ?? true) &&
      ageYears >= fromAgeYears &&
      ageYears < belowAgeYears,
  );
  const isHeldBack = fitting.some(({ family }) => !ALLOWED[diet.allowed].includes(family));
  return fitting
    .filter(({ id, family }) => ALLOWED[diet.allowed].includes(family) && (id !== ASK_BEFORE_FOOD || isHeldBack))
    .map(({ id, says, onLeaflet, source }) => ({ id, says, onLeaflet, source }));
}

/** Stands only where advice about food was held back. It names no reason. */
export const ASK_BEFORE_FOOD = 'ask-before-food';
