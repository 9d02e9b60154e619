import { checkItem } from '../../regimen/checkItem.ts';
import { mayLimitFood } from '../../regimen/mayLimitFood.ts';
import type { RegimenTables } from '../../regimen/tables.ts';
import type { FoodLimit, Jurisdiction, PersonFacts, ShelfItem } from '../../regimen/types.ts';

/** Whether gum may be suggested to a person; what holds it back may be private. */
export interface GumLimit {
  readonly allowed: boolean;
  readonly because: string;
  /** Questions to ask before it may be. */
  readonly ask: readonly string[];
  readonly private: boolean;
  /** What goes with every suggestion of gum. */
  readonly warnings: readonly string[];
}

/** What may be suggested about a person's day at all. */
export interface DayLimits {
  readonly food: FoodLimit;
  readonly gum: GumLimit;
}

/**
 * Gum as a suggestion names it: nobody knows which pack the person will buy, so it may hold what any sugar-free gum holds. Xylitol's warning
 * about dogs goes with it for the same reason.
 */
const ANY_GUM: ShelfItem = {
  id: 'gum',
  name: 'Sugar-free gum',
  leafletName: { en: 'Sugar-free gum', es: 'Chicle sin azúcar' },
  agentId: 'POLYOL_GUM',
  form: 'gum',
  traits: ['aspartame', 'sorbitol', 'maltitol', 'xylitol'],
  inStock: true,
  release: 'anyone',
  meets: ['sweetener'],
  use: { timesPerDay: 1, amount: '1 piece' },
};

/**
 * What may be suggested about food and gum to a person, by the rules of the plan: food by `mayLimitFood`, gum by the safety rules of a pack
 * of gum. Without facts nothing is known, and so nothing may be.
 * @param facts  undefined where nobody is named
 */
export function dayLimits(facts: PersonFacts | undefined, tables: RegimenTables, jurisdiction: Jurisdiction = 'unknown'): DayLimits {
  if (!facts) {
    const { source } = tables.foodLimits;
    const because = 'no person is named';
    return {
      food: { allowed: 'after-only', because, ask: [], private: false, source },
      gum: { allowed: false, because, ask: [], private: false, warnings: [] },
    };
  }
  return { food: mayLimitFood(facts, tables), gum: gumLimit(facts, tables, jurisdiction) };
}

function gumLimit(facts: PersonFacts, tables: RegimenTables, jurisdiction: Jurisdiction): GumLimit {
  const { stops, asks, cautions, warnings } = checkItem({ item: ANY_GUM, facts, tables, jurisdiction, level: undefined });
  const bars = [...stops, ...cautions, ...asks];
  return {
    allowed: bars.length === 0,
    because: bars.map((bar) => bar.because).join('; '),
    ask: [...new Set(bars.flatMap((bar) => bar.ask ?? []))],
    private: bars.some((bar) => bar.private === true),
    warnings: warnings.map(({ text }) => text),
  };
}
