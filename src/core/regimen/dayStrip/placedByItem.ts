import type { PlacedUse } from './types.ts';

/** Uses of each item, in the order of the day, the item that is used first before the others. */
export function placedByItem(
  placed: readonly PlacedUse[],
): readonly { readonly shelfItemId: string; readonly uses: readonly PlacedUse[] }[] {
  const ids = [...new Set(placed.map(({ shelfItemId }) => shelfItemId))];
  return ids.map((shelfItemId) => ({ shelfItemId, uses: placed.filter((use) => use.shelfItemId === shelfItemId) }));
}
