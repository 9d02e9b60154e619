import { itemTraits } from './itemTraits.ts';
import type { Interaction } from './tables.ts';
import type { ShelfItem } from './types.ts';

/** What an interaction means for two packs in one plan: never both, or both with something to mind. */
export interface Meeting {
  readonly interaction: Interaction;
  readonly verdict: 'never-both' | 'mind';
}

/**
 * Interactions of two packs, in either order. What must only be kept apart in time does not forbid a plan, unless both are used at the
 * visit.
 * @returns those of level stop, caution and warn, in the order of the table
 */
export function checkTogether(a: ShelfItem, b: ShelfItem, interactions: readonly Interaction[]): readonly Meeting[] {
  return interactions
    .filter((i) => i.level !== 'info' && (meets(i, a, b) || meets(i, b, a)))
    .map((interaction) => ({ interaction, verdict: isForbidden(interaction, a, b) ? 'never-both' : 'mind' }));
}

/**
 * What may be told of a pack on request, beside these: rows of level info. A row without agents on its other side is about food or habits,
 * and stands with the pack alone.
 */
export function remarksOn(item: ShelfItem, others: readonly ShelfItem[], interactions: readonly Interaction[]): readonly Interaction[] {
  return interactions.filter((row) => {
    if (row.level !== 'info') return false;
    if (row.withAgentIds.length === 0) return isFirst(row, item);
    return others.some((other) => other.id !== item.id && (meets(row, item, other) || meets(row, other, item)));
  });
}

const isFirst = ({ agentIds, traits }: Interaction, item: ShelfItem): boolean =>
  agentIds.includes(item.agentId) && (traits === undefined || holdsAny(item, traits));

function meets(row: Interaction, first: ShelfItem, second: ShelfItem): boolean {
  const { withAgentIds, withTraits } = row;
  return isFirst(row, first) && (withAgentIds.includes(second.agentId) || holdsAny(second, withTraits ?? []));
}

function isForbidden({ level, apart }: Interaction, a: ShelfItem, b: ShelfItem): boolean {
  const isOneVisit = a.use.atVisit === true && b.use.atVisit === true;
  if (apart === 'regimen') return level === 'stop';
  return isOneVisit && (level === 'stop' || level === 'caution');
}

function holdsAny(item: ShelfItem, wanted: readonly string[]): boolean {
  const traits = itemTraits(item);
  return wanted.some((t) => traits.has(t));
}
