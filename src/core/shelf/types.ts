/** Why packs came or went. `returned` = back to whoever supplied them. */
export type StockReason = 'received' | 'dispensed' | 'expired' | 'corrected' | 'returned';

/** Packs that came in together. `null` = not noted on the pack or not read: never a date that was assumed. */
export interface Lot {
  readonly lot: string | null;
  /** Last day on which a pack may be given, ISO local date. */
  readonly expiry: string | null;
}

export interface LotStock extends Lot {
  /** Whole packs, 0 or more. */
  readonly quantity: number;
}

/** One entry of the stock book. It is never changed; one that was wrong is taken back with a reason and counts no more. */
export interface StockMove extends Lot {
  readonly id: string;
  readonly shelfItemId: string;
  /** Whole packs, negative for those that went. */
  readonly quantity: number;
  readonly reason: StockReason;
  /** ISO local date. */
  readonly onDate: string;
  readonly visitId: string | null;
  /** Why, in words. */
  readonly note: string | null;
  /** Why it does not count. */
  readonly takenBack: string | null;
}

/** What the stock book says of one item that the practice counts. An item without a move that counts is not here: it is not counted. */
export interface CountedItem {
  readonly shelfItemId: string;
  /** Lots of which packs are left, the first to be given first. */
  readonly lots: readonly LotStock[];
}
