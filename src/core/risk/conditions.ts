import type { AgeRange, Condition, ItemDefinition, ProtocolTable } from './protocol.ts';
import type { Items, ItemValue } from './types.ts';

/** True when the item is known and fits. An unknown value never fits, so "unknown" ticks nothing. */
export function conditionHolds(condition: Condition, items: Items): boolean {
  const value = items[condition.item];
  if (value === undefined) return false;
  if ('is' in condition) return value === condition.is;
  return typeof value === 'number' && value >= condition.from && (condition.to === null || value <= condition.to);
}

export function anyHolds(conditions: readonly Condition[], items: Items): boolean {
  return conditions.some((condition) => conditionHolds(condition, items));
}

export function isInAgeRange(range: AgeRange, ageYears: number): boolean {
  return ageYears >= (range.fromAgeYears ?? 0) && ageYears < (range.belowAgeYears ?? Number.POSITIVE_INFINITY);
}

/** True when the list is meant for this age, in completed years. */
export function appliesAtAge({ applies: { fromAgeYears, belowAgeYears } }: ProtocolTable, ageYears: number): boolean {
  return isInAgeRange({ fromAgeYears, belowAgeYears: belowAgeYears ?? undefined }, ageYears);
}

/** Values of an item that a list cannot tell apart. Booleans are classes of one; counts are whole-number intervals, `to: null` open above. */
export type ValueClass = { readonly is: boolean } | { readonly from: number; readonly to: number | null };

/**
 * Splits an item's values into the classes that these conditions can tell apart, so that trying one value of each is exhaustive.
 * @param conditions  any conditions; those on other items are ignored
 * @returns classes in rising order, covering every value once
 */
export function listValueClasses(definition: ItemDefinition, conditions: readonly Condition[]): readonly ValueClass[] {
  if (definition.valueType === 'boolean') return [{ is: false }, { is: true }];
  const starts = new Set([0]);
  for (const condition of conditions) {
    if (condition.item !== definition.id || 'is' in condition) continue;
    starts.add(condition.from);
    if (condition.to !== null) starts.add(condition.to + 1);
  }
  const sorted = [...starts].sort((a, b) => a - b);
  return sorted.map((from, i) => {
    const next = sorted[i + 1];
    return { from, to: next === undefined ? null : next - 1 };
  });
}

export function isInClass(valueClass: ValueClass, value: ItemValue): boolean {
  if ('is' in valueClass) return value === valueClass.is;
  return typeof value === 'number' && value >= valueClass.from && (valueClass.to === null || value <= valueClass.to);
}

/** The value of the class nearest to the present one: from 5 snacks to "3 or fewer" that is 3. For an unknown value, the end nearest the next class. */
export function nearestInClass(valueClass: ValueClass, current: ItemValue | undefined): ItemValue {
  if ('is' in valueClass) return valueClass.is;
  const { from, to } = valueClass;
  if (typeof current !== 'number') return to ?? from;
  if (current < from) return from;
  return to !== null && current > to ? to : current;
}
