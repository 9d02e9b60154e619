import { withoutDoubtfulWeight } from './dose/weightDoubt.ts';
import type { RegimenTables } from './tables.ts';
import type { FoodLimit, PersonFacts } from './types.ts';

const CHILD_BELOW_YEARS = 18;
type Fact = keyof PersonFacts;

/**
 * Whether a suggestion may drop, delay or limit a meal or snack. Never while the safety check is unanswered, with glucose-lowering
 * medicine, eating disorder, underweight, sickness of pregnancy, tube or supplement feeding: then only what to do afterwards, with
 * referral. Under the table's age only what is in a sweet bottle or cup.
 * @returns the strictest answer that holds, with the questions still to ask
 */
export function mayLimitFood(facts: PersonFacts, tables: RegimenTables): FoodLimit {
  const { foodLimits, askFor } = tables;
  const { source } = foodLimits;
  const held = [
    ...foodLimits.medicines.filter((id) => facts.medicines?.includes(id)).map((id) => tables.medicines[id]),
    ...foodLimits.conditions.filter((id) => facts.conditions?.includes(id)).map((id) => tables.conditions[id]),
  ];
  if (held.length > 0) {
    const because = `${held.map((h) => h?.label ?? 'listed').join(', ')}: no meal or snack is dropped, delayed or limited; refer`;
    return { allowed: 'after-only', because, ask: [], private: held.some((h) => h?.private ?? true), source };
  }
  const unknown = unansweredSafety(facts, tables);
  if (unknown.length > 0) {
    const ask = [...new Set(unknown.flatMap((fact) => askFor[fact] ?? []))];
    return { allowed: 'after-only', because: 'the safety check is not answered yet', ask, private: false, source };
  }
  if (facts.ageYears < foodLimits.belowAgeYears) {
    const because = `under ${foodLimits.belowAgeYears} years: only what is in a sweet bottle or cup`;
    return { allowed: 'sweet-bottle-only', because, ask: [], private: false, source };
  }
  return { allowed: 'any', because: 'nothing in the safety check speaks against it', ask: [], private: false, source };
}

/** Facts of the safety check that are not known today; an answer that no table understands counts as not known. */
export function unansweredSafety(facts: PersonFacts, tables: RegimenTables): readonly Fact[] {
  const understood = (list: readonly string[] | undefined, ids: Readonly<Record<string, unknown>>) =>
    list?.every((id) => ids[id] !== undefined) ?? false;
  const unknown: Fact[] = [];
  if (!understood(facts.medicines, tables.medicines)) unknown.push('medicines');
  if (!understood(facts.conditions, tables.conditions)) unknown.push('conditions');
  if (facts.allergies === undefined) unknown.push('allergies');
  if (facts.ageYears >= tables.pregnancyFromAgeYears && facts.pregnant === undefined) unknown.push('pregnant');
  if (facts.ageYears < CHILD_BELOW_YEARS && withoutDoubtfulWeight(facts, tables.fluoride.weights).weightKg === undefined)
    unknown.push('weightKg');
  if (facts.canSpit === undefined) unknown.push('canSpit');
  return unknown;
}
