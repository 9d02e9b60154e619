import type { CompiledList, Rule, Tally } from './compileList.ts';
import { isInClass, listValueClasses, nearestInClass, type ValueClass } from './conditions.ts';
import type { ItemDefinition } from './protocol.ts';
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
  readonly definitions: Readonly<Record<string, ItemDefinition>>;
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
  const base = new Array<number>(list.size).fill(0);
  for (const rule of list.rules) {
    if (!rule.conditions.some((c) => isFree.has(c.item))) rule.add(items, base);
  }
  const start = list.settle(base);
  let states = new Map<number, Reached>([[keyOf(start), { tally: start, cost: 0, sets: keep > 0 ? [[]] : [] }]]);
  for (const group of groupByFreeItems(list.rules, free)) {
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
function groupByFreeItems(rules: readonly Rule[], free: readonly string[]): readonly Group[] {
  let groups: { free: Set<string>; rules: Rule[] }[] = [];
  for (const rule of rules) {
    const own = new Set(rule.conditions.map((c) => c.item).filter((item) => free.includes(item)));
    if (own.size === 0) continue;
    const touching = groups.filter((group) => [...own].some((item) => group.free.has(item)));
    const merged = {
      free: new Set([...touching.flatMap((group) => [...group.free]), ...own]),
      rules: [...touching.flatMap((group) => group.rules), rule],
    };
    groups = [...groups.filter((group) => !touching.includes(group)), merged];
  }
  return groups
    .map((group) => ({ free: free.filter((item) => group.free.has(item)), rules: group.rules }))
    .sort((a, b) => free.indexOf(a.free[0] ?? '') - free.indexOf(b.free[0] ?? ''));
}

/** What one group can add, over every combination of its free items, each sum with its cheapest sets. */
function listSteps(group: Group, { list, items, definitions, free, maxChanges, keep }: ReachOptions): readonly Reached[] {
  const conditions = list.rules.flatMap((rule) => rule.conditions);
  const steps = new Map<number, Reached>();
  const visit = (index: number, values: Items, changes: readonly Change[]): void => {
    const item = group.free[index];
    if (item === undefined) {
      const tally = new Array<number>(list.size).fill(0);
      for (const rule of group.rules) rule.add(values, tally);
      keepBest(steps, { tally: list.settle(tally), cost: changes.length, sets: keep > 0 ? [changes] : [] }, keep);
      return;
    }
    visit(index + 1, values, changes);
    if (changes.length >= maxChanges) return;
    for (const change of listChanges(item, items[item], { definitions, conditions, place: free.indexOf(item) })) {
      visit(index + 1, { ...values, [item]: change.to }, [...changes, change]);
    }
  };
  visit(0, items, []);
  return [...steps.values()];
}

function listChanges(
  item: string,
  from: ItemValue | undefined,
  context: {
    readonly definitions: Readonly<Record<string, ItemDefinition>>;
    readonly conditions: Parameters<typeof listValueClasses>[1];
    readonly place: number;
  },
): readonly Change[] {
  const definition = context.definitions[item];
  if (definition === undefined) throw new RangeError(`item ${item} has no definition`);
  return listValueClasses(definition, context.conditions)
    .map((valueClass: ValueClass, i) => ({ valueClass, rank: context.place * 16 + i }))
    .filter(({ valueClass }) => from === undefined || !isInClass(valueClass, from))
    .map(({ valueClass, rank }) => ({ item, from, to: nearestInClass(valueClass, from), rank }));
}
