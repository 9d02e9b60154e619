import { type CompiledList, type Rule, sumRules, type Tally } from './compileList.ts';
import { isInClass, nearestInClass } from './conditions.ts';
import type { Items, ItemValue } from './types.ts';

/** One item set to another value. `rank` orders changes: place of the item on the list, then the value. */
export interface Change {
  readonly item: string;
  readonly from: ItemValue | undefined;
  readonly to: ItemValue;
  readonly rank: number;
}

/** A tally that can be reached, the fewest changes that reach it, and up to `keep` such sets. */
export interface Reached {
  readonly tally: Tally;
  readonly cost: number;
  readonly sets: readonly (readonly Change[])[];
}

export interface ReachOptions {
  readonly list: CompiledList;
  readonly items: Items;
  /** Items that may take any value, in the order of the list. */
  readonly free: readonly string[];
  /** Largest number of changes in a set. */
  readonly maxChanges: number;
  /** How many sets to keep for each tally; 0 when only the tallies are wanted. */
  readonly keep: number;
}

/**
 * Every tally that the list can reach when the free items take any value, each with the fewest changes that reach it. Exact.
 * Rules that share no free item add up independently, so the tallies are built group by group instead of over all combinations:
 * a few thousand steps where plain enumeration would need billions.
 * @returns settled tallies, each once
 */
export function reachTallies(options: ReachOptions): readonly Reached[] {
  const { list, items, free, maxChanges, keep } = options;
  const isFree = new Set(free);
  const unmoved = list.rules.filter((rule) => !rule.conditions.some((c) => isFree.has(c.item)));
  const start = list.settle(sumRules(unmoved, items, list.size));
  let states = new Map<number, Reached>([[keyOf(start), { tally: start, cost: 0, sets: keep > 0 ? [[]] : [] }]]);
  for (const group of groupByFreeItems(list, free)) {
    const steps = listSteps(group, options);
    const next = new Map<number, Reached>();
    for (const state of states.values()) {
      for (const step of steps) {
        const cost = state.cost + step.cost;
        if (cost > maxChanges) continue;
        const tally = list.settle(state.tally.map((n, i) => n + (step.tally[i] ?? 0)));
        const sets = state.sets.flatMap((before) => step.sets.map((after) => [...before, ...after]));
        keepBest(next, { tally, cost, sets }, keep);
      }
    }
    states = next;
  }
  return [...states.values()];
}

/** Keeps the cheaper way to a tally; among equally cheap ones the first `keep` sets by rank. */
function keepBest(states: Map<number, Reached>, candidate: Reached, keep: number): void {
  const key = keyOf(candidate.tally);
  const known = states.get(key);
  if (known === undefined || candidate.cost < known.cost) {
    states.set(key, { ...candidate, sets: firstSets(candidate.sets, keep) });
  } else if (candidate.cost === known.cost && keep > 0) {
    states.set(key, { ...known, sets: firstSets([...known.sets, ...candidate.sets], keep) });
  }
}

/** The first `keep` sets, in the order of their ranks. All sets must have the same size. */
export function firstSets(sets: readonly (readonly Change[])[], keep: number): readonly (readonly Change[])[] {
  if (sets.length <= 1) return sets.slice(0, keep);
  return [...sets].sort(compareSets).slice(0, keep);
}

function compareSets(a: readonly Change[], b: readonly Change[]): number {
  for (const [i, change] of a.entries()) {
    const difference = change.rank - (b[i]?.rank ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** One number for a settled tally, whose places all stay below 32. */
function keyOf(tally: Tally): number {
  return tally.reduce((key, n) => key * 32 + n, 0);
}

interface Group {
  readonly free: readonly string[];
  readonly rules: readonly Rule[];
}

/** Rules joined by the free items that they share, in the order of the first of these items. */
function groupByFreeItems({ reads }: CompiledList, free: readonly string[]): readonly Group[] {
  const isFree = new Set(free);
  const groups: Group[] = [];
  for (const item of free) {
    if (!isFree.delete(item)) continue;
    const together = [item];
    // Grows while it is walked: whatever a rule reads beside an item of the group belongs to the group.
    for (const member of together) {
      for (const other of reads.get(member)?.readWith ?? []) if (isFree.delete(other)) together.push(other);
    }
    const rules = together.length === 1 ? (reads.get(item)?.rules ?? []) : rulesOf(together, reads);
    groups.push({ free: together.length === 1 ? together : free.filter((id) => together.includes(id)), rules });
  }
  return groups;
}

const rulesOf = (items: readonly string[], reads: CompiledList['reads']): readonly Rule[] => [
  ...new Set(items.flatMap((item) => reads.get(item)?.rules ?? [])),
];

/** What one group can add, over every combination of its free items, each sum with its cheapest sets. */
function listSteps(group: Group, { list, items, free, maxChanges, keep }: ReachOptions): readonly Reached[] {
  const steps = new Map<number, Reached>();
  const values: Record<string, ItemValue | undefined> = {};
  for (const { item } of group.rules.flatMap((rule) => rule.conditions)) values[item] = items[item];
  const changesOf = group.free.map((item) => listChanges(item, items[item], list, free.indexOf(item)));
  const visit = (index: number, changes: readonly Change[]): void => {
    const item = group.free[index];
    if (item === undefined) {
      const tally = list.settle(sumRules(group.rules, values, list.size));
      keepBest(steps, { tally, cost: changes.length, sets: keep > 0 ? [changes] : [] }, keep);
      return;
    }
    visit(index + 1, changes);
    if (changes.length >= maxChanges) return;
    for (const change of changesOf[index] ?? []) {
      values[item] = change.to;
      visit(index + 1, [...changes, change]);
    }
    values[item] = items[item];
  };
  visit(0, []);
  return [...steps.values()];
}

/** @throws RangeError for an item without a definition: nobody knows which values it can take */
function listChanges(item: string, from: ItemValue | undefined, list: CompiledList, place: number): readonly Change[] {
  const classes = list.reads.get(item)?.classes ?? [];
  if (classes.length === 0) throw new RangeError(`item ${item} has no definition`);
  return classes
    .map((valueClass, i) => ({ valueClass, rank: place * 16 + i }))
    .filter(({ valueClass }) => from === undefined || !isInClass(valueClass, from))
    .map(({ valueClass, rank }) => ({ item, from, to: nearestInClass(valueClass, from), rank }));
}
