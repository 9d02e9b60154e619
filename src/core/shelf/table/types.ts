import type { ShelfItem } from '../../regimen/types.ts';
import type { Lot } from '../types.ts';
import type { ItemColumn } from './columns.ts';
import type { ShelfEntry } from './formatShelf.ts';
import type { FieldProblem, ReadSetting } from './readItem.ts';

export interface TableLine {
  /** Number of the line in the text, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface LineProblem extends FieldProblem {
  /** 0 = the table as a whole. */
  readonly line: number;
}

/** A lot as the table counts it. */
export interface TableLot extends Lot {
  readonly line: number;
  readonly packs: number;
  /** What the book says; null = the lot is not there. */
  readonly there: number | null;
  readonly isExpired: boolean;
}

export interface CellChange {
  readonly field: ItemColumn;
  readonly from: string;
  readonly to: string;
}

export interface TableItem {
  readonly line: number;
  /** `same`: nothing of the item itself changes. */
  readonly kind: 'new' | 'changed' | 'same';
  /** Of a new item without an id, the id is ''. */
  readonly item: ShelfItem;
  readonly changes: readonly CellChange[];
  /** What is not known of it, and what follows from that; of what is new or changed only. */
  readonly open: readonly string[];
  readonly lots: readonly TableLot[];
}

export interface ShelfTable {
  readonly items: readonly TableItem[];
  /** As soon as there is one, nothing may be written. */
  readonly problems: readonly LineProblem[];
}

export interface TableSetting extends ReadSetting {
  /** The shelf as it stands. */
  readonly shelf: readonly ShelfEntry[];
  /** ISO local date. */
  readonly today: string;
}
