import type { Bar, ItemCheck } from './checkItem.ts';
import type { Draft, DraftView } from './draftPlan.ts';
import type { Exclusion } from './types.ts';

/**
 * Packs that would meet a need, or that somebody signed, and that do not stand in the plan because of a rule: every stop, else what to ask
 * first in one entry, else what has to be checked and recorded, else what it would meet in the plan. A pack that merely came second is not
 * listed.
 */
export function listNotOffered(draft: Draft, { needs, checks, signatures }: DraftView): readonly Exclusion[] {
  const open = needs.filter((n) => n.state !== 'not-needed').map((n) => n.kind);
  const shown = new Set([...draft.lines, ...draft.alternatives.map((a) => a.candidate)].map((c) => c.item.id));
  const isWanted = ({ item }: ItemCheck) =>
    (item.inStock && item.meets.some((kind) => open.includes(kind))) || (signatures.get(item.id) ?? []).length > 0;
  return checks
    .filter((check) => isWanted(check) && !shown.has(check.item.id))
    .flatMap((check) => reasonsFor(check, draft.barred))
    .map(toExclusion);
}

function reasonsFor({ item, stops, asks, cautions }: ItemCheck, barred: readonly Bar[]): readonly Bar[] {
  if (stops.length > 0) return stops;
  if (asks.length > 0) return [mergeAsks(asks)];
  const met = barred.filter((b) => b.shelfItemId === item.id).slice(0, 1);
  return met.length > 0 ? met : cautions;
}

function mergeAsks(asks: readonly Bar[]): Bar {
  const [first] = asks as readonly [Bar, ...Bar[]];
  const ask = [...new Set(asks.flatMap((a) => a.ask ?? []))];
  return { ...first, because: [...new Set(asks.map((a) => a.because))].join('; '), ask, private: asks.some((a) => a.private) };
}

const toExclusion = ({ shelfItemId, ruleId, level, because, ask, private: isPrivate, source }: Bar): Exclusion => ({
  shelfItemId,
  ruleId,
  level,
  because,
  ...(ask === undefined ? {} : { ask }),
  ...(isPrivate ? { private: true } : {}),
  source,
});
