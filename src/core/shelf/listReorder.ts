import type { ShelfItem } from '../regimen/types.ts';
import { addDays, daysBetween } from '../visit/calendar.ts';
import { countPacks } from './lots.ts';
import type { CountedItem } from './types.ts';

/** What was given is counted over so many days back. */
export const GIVEN_OVER_DAYS = 90;
/** A practice that has counted for a few days has no rate yet: one busy day would order a cupboard full. */
const LEAST_DAYS = 30;
/** An order lasts a month beyond the day it arrives. */
const COVER_DAYS = 30;

export interface ReorderInput {
  readonly items: readonly ShelfItem[];
  readonly counted: readonly (CountedItem & {
    /** Packs given, or used in the practice, in the last `GIVEN_OVER_DAYS`. */
    readonly given: number;
    /** Day of the first move that counts. */
    readonly since: string;
  })[];
  readonly today: string;
  /** Days from an order to its arrival. Undefined = not set: stock is then looked at as it is today. */
  readonly leadDays: number | undefined;
}

export interface ReorderLine {
  readonly item: ShelfItem;
  /** May be given today. */
  readonly usable: number;
  /** Of those, past their last day before an order would be there. */
  readonly expiring: number;
  readonly minimumLevel: number | undefined;
  /** Packs given in a month, by the last `GIVEN_OVER_DAYS`. */
  readonly perMonth: number;
  /** Packs to order; null where the practice has set no minimum. */
  readonly suggested: number | null;
}

/**
 * What to order: counted items that are at their minimum or below it, without what expires before an order arrives; and those that are
 * out although no minimum is set. The suggestion brings an item above its minimum for a month after the order arrives, at the rate at
 * which packs were given.
 * @returns lines in the order of the items
 */
export function listReorder({ items, counted, today, leadDays }: ReorderInput): readonly ReorderLine[] {
  const byId = new Map(counted.map((entry) => [entry.shelfItemId, entry]));
  const arrives = addDays(today, leadDays ?? 0);
  return items.flatMap((item) => {
    const entry = byId.get(item.id);
    if (!entry) return [];
    const { usable } = countPacks(entry.lots, today);
    const lasting = countPacks(entry.lots, arrives).usable;
    const { minimumLevel } = item;
    if (minimumLevel === undefined ? lasting > 0 : lasting > minimumLevel) return [];
    const days = Math.min(GIVEN_OVER_DAYS, Math.max(LEAST_DAYS, daysBetween(entry.since, today)));
    const perDay = entry.given / days;
    const needed = Math.ceil(perDay * ((leadDays ?? 0) + COVER_DAYS) - 1e-9);
    const suggested = minimumLevel === undefined ? null : minimumLevel + 1 + needed - lasting;
    return [{ item, usable, expiring: usable - lasting, minimumLevel, perMonth: perDay * COVER_DAYS, suggested }];
  });
}
