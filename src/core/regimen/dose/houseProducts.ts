import { itemPpm } from '../itemTraits.ts';
import type { Agent } from '../tables.ts';
import type { PlanLine, ShelfItem } from '../types.ts';
import type { HouseProduct } from './acuteTable.ts';

/** The products of a plan that hold fluoride, or may, as they stand in the house or at the visit. */
export function houseProducts(
  lines: readonly Pick<PlanLine, 'shelfItemId'>[],
  shelf: readonly ShelfItem[],
  agents: readonly Agent[],
): readonly HouseProduct[] {
  return lines.flatMap(({ shelfItemId }) => {
    const item = shelf.find(({ id }) => id === shelfItemId);
    if (!item) return [];
    const ppm = itemPpm(item);
    const isFluoride = agents.find((a) => a.id === item.agentId)?.ppmRange !== undefined || (ppm ?? 0) > 0;
    return isFluoride ? [productOf(item, ppm)] : [];
  });
}

/** A pack in another unit than the strength tells nothing certain: 75 mL of paste weigh more than 75 g. */
function productOf({ name, form, use, packAmount }: ShelfItem, ppm: number | undefined): HouseProduct {
  const unit = use.amountMl !== undefined || form === 'rinse' || form === 'varnish' || form === 'drops' ? 'mL' : 'g';
  return { name, ppm, unit, packAmount: packAmount?.unit === unit ? packAmount.value : undefined };
}
