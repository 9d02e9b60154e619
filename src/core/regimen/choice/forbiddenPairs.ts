import { checkTogether } from '../checkTogether.ts';
import type { Interaction } from '../tables.ts';
import type { ShelfItem } from '../types.ts';

export interface ForbiddenPair {
  /** Places of the two packs, the smaller first. */
  readonly places: readonly [number, number];
  readonly interaction: Interaction;
}

/** Packs that must never be in one plan, each pair once for each interaction that forbids it. */
export function forbiddenPairs(items: readonly ShelfItem[], interactions: readonly Interaction[]): readonly ForbiddenPair[] {
  const pairs = new Map<string, ForbiddenPair>();
  for (const interaction of interactions) {
    items.forEach((a, i) => {
      if (!interaction.agentIds.includes(a.agentId)) return;
      items.forEach((b, j) => {
        if (i === j || !checkTogether(a, b, [interaction]).some((m) => m.verdict === 'never-both')) return;
        const places = i < j ? ([i, j] as const) : ([j, i] as const);
        pairs.set(`${interaction.id} ${places.join(' ')}`, { places, interaction });
      });
    });
  }
  return [...pairs.values()];
}
