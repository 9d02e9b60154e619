import type { Bar, ItemCheck } from './checkItem.ts';
import { type Draft, type DraftView, keptOutBy } from './draftPlan.ts';
import type { Exclusion, Need, ShelfItem } from './types.ts';

/**
 * Packs that would meet a need, that somebody signed, or that the person is allergic to, and that do not stand in the plan because of a rule: every stop, else what to ask
 * first in one entry, else what has to be checked and recorded, else what it would meet in the plan. A pack that merely came second is not
 * listed.
 */
export function listNotOffered(draft: Draft, view: DraftView): readonly Exclusion[] {
  const { needs, checks, signatures, refused } = view;
  const barred = [...draft.barred, ...keptOutBy(draft, view)];
  const inPlan = [...draft.lines, ...draft.alternatives.map((a) => a.candidate)].map((c) => c.item.id);
  const shown = new Set([...inPlan, ...refused.map((r) => r.shelfItemId)]);
  // An allergy is said of every pack in stock: somebody could hand it out beside the plan.
  const isWanted = ({ item, isAllergic }: ItemCheck) =>
    (item.inStock && (isAllergic || needs.some((need) => isWantedFor(need, item)))) || (signatures.get(item.id) ?? []).length > 0;
  return checks
    .filter((check) => isWanted(check) && !shown.has(check.item.id))
    .flatMap((check) => reasonsFor(check, barred))
    .map(toExclusion);
}

function isWantedFor({ state, kind, agentIds }: Need, item: ShelfItem): boolean {
  const isNamed = agentIds === undefined || agentIds.some((tier) => tier.includes(item.agentId));
  return state !== 'not-needed' && item.meets.includes(kind) && isNamed;
}

function reasonsFor({ item, stops, asks, cautions }: ItemCheck, barred: readonly Bar[]): readonly Bar[] {
  if (stops.length > 0) return stops;
  if (asks.length > 0) return [mergeAsks(asks)];
  const met = barred.filter((b) => b.shelfItemId === item.id).slice(0, 1);
  return met.length > 0 ? met : cautions;
}

/** One entry: what is not known, each fact once, then what has to be read on the pack. */
function mergeAsks(asks: readonly Bar[]): Bar {
  const [first] = asks as readonly [Bar, ...Bar[]];
  const ask = [...new Set(asks.flatMap((a) => a.ask ?? []))];
  return { ...first, because: becauseOf(asks), ask, private: asks.some((a) => a.private) };
}

function becauseOf(asks: readonly Bar[]): string {
  const [only] = asks;
  if (only && asks.length === 1) return only.because;
  const unknown = [...new Set(asks.flatMap((a) => a.unknown ?? []))];
  const others = asks.filter((a) => a.unknown === undefined).map((a) => a.because);
  return [...(unknown.length > 0 ? [`not known yet: ${unknown.join(', ')}`] : []), ...new Set(others)].join('; ');
}

const toExclusion = ({ shelfItemId, ruleId, level, because, ask, private: isPrivate, overridable, action, source }: Bar): Exclusion => ({
  shelfItemId,
  ruleId,
  level,
  because,
  ...(ask === undefined ? {} : { ask }),
  ...(isPrivate ? { private: true } : {}),
  ...(level === 'stop' && overridable ? { overridable } : {}),
  ...(level === 'stop' && action !== '' ? { instead: action } : {}),
  source,
});
