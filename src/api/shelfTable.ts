import { z } from 'zod';
import type { ShelfItem } from '../core/regimen/types.ts';
import type { ShelfTable } from '../core/shelf/table/types.ts';

const text = z.string().max(900_000, { error: 'is longer than 900,000 letters' });

/** A table of the shelf, as it was pasted or chosen. */
export const ShelfTableText = z.strictObject({ text });
export const ShelfTableSeen = z.strictObject({ text, seen: z.string().max(100) });

export type LeafletNameOf = (agentId: string, form: ShelfItem['form']) => ShelfItem['leafletName'] | undefined;

/** What a table would do, or did. */
export interface ShelfTableView extends ShelfTable {
  /** Comes back with the table when it is written, so that nothing else is done than what was looked at. */
  readonly seen: string;
}
