import { itemTraits } from './itemTraits.ts';
import type { Caution } from './tables.ts';
import type { Plan, ShelfItem } from './types.ts';

/** Cautions that a leaflet for these items must print, in the order of the table; those about no item in particular hold with any item. */
export function listCautions(items: readonly ShelfItem[], ageYears: number, cautions: readonly Caution[]): Plan['cautions'] {
  return cautions
    .filter(({ appliesTo: { agentIds, traits, withAgentIds, belowAgeYears } }) => {
      if (belowAgeYears !== undefined && ageYears >= belowAgeYears) return false;
      if (withAgentIds !== undefined && !items.some((item) => withAgentIds.includes(item.agentId))) return false;
      if (agentIds === undefined && traits === undefined) return items.length > 0;
      return items.some((item) => agentIds?.includes(item.agentId) || traits?.some((t) => itemTraits(item).has(t)));
    })
    .map(({ id, source }) => ({ id, source }));
}
