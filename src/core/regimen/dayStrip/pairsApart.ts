import { itemTraits } from '../itemTraits.ts';
import type { Interaction } from '../tables.ts';
import type { ShelfItem } from '../types.ts';
import type { ApartInTime } from './types.ts';

/**
 * Items of one regimen that are not used within some minutes of each other. A pair that several rules keep apart takes the longest.
 * @param interactions  rows with `apart: 'session'` and `apartMinutes` count; a row that only tells counter-evidence has no minutes
 */
export function pairsApart(items: readonly ShelfItem[], interactions: readonly Interaction[]): readonly ApartInTime[] {
  return items.flatMap((a, i) =>
    items.slice(i + 1).flatMap((b) => {
      const rows = interactions.filter(
        (row) => row.apart === 'session' && row.apartMinutes !== undefined && (meets(row, a, b) || meets(row, b, a)),
      );
      const [longest] = rows.toSorted((x, y) => (y.apartMinutes ?? 0) - (x.apartMinutes ?? 0));
      return longest?.apartMinutes === undefined
        ? []
        : [{ pair: [a.id, b.id] as const, minutes: longest.apartMinutes, ruleId: longest.id }];
    }),
  );
}

function meets({ agentIds, traits, withAgentIds, withTraits }: Interaction, first: ShelfItem, second: ShelfItem): boolean {
  if (!agentIds.includes(first.agentId) || (traits && !holdsAny(first, traits))) return false;
  return withAgentIds.includes(second.agentId) || holdsAny(second, withTraits ?? []);
}

function holdsAny(item: ShelfItem, wanted: readonly string[]): boolean {
  const held = itemTraits(item);
  return wanted.some((trait) => held.has(trait));
}
