import type { ShelfItem } from '../regimen/types.ts';
import { countPacks } from './lots.ts';
import type { CountedItem } from './types.ts';

/**
 * The shelf as a plan takes it: an item that the practice counts is in stock while a pack may be given, one that it does not count stays
 * as somebody said it is.
 * @param givenHere  items given at this visit: the pack that was the last one stays in the plan of whoever got it
 */
export function withStock(
  shelf: readonly ShelfItem[],
  counted: readonly CountedItem[],
  { onDate, givenHere = [] }: { readonly onDate: string; readonly givenHere?: readonly string[] },
): readonly ShelfItem[] {
  if (counted.length === 0) return shelf;
  const lotsById = new Map(counted.map(({ shelfItemId, lots }) => [shelfItemId, lots]));
  return shelf.map((item) => {
    const lots = lotsById.get(item.id);
    if (!lots) return item;
    return { ...item, inStock: countPacks(lots, onDate).usable > 0 || givenHere.includes(item.id) };
  });
}
