import { z } from 'zod';
import type { SignatureCover } from '../core/regimen/signatureCover.ts';
import type { SignedBy } from '../core/regimen/types.ts';
import type { CountedItem, Lot } from '../core/shelf/types.ts';

const id = z.uuid().optional();
const lotNumber = z.string().max(60).nullish();
const lastDay = z.string().max(10).nullish();
const lot = z.strictObject({ lot: z.string().max(60).nullable(), expiry: z.string().max(10).nullable() });
const packs = z.number();
const reason = z.string().max(500).optional();

export const ReceiveBody = z.strictObject({ id, lot: lotNumber, expiry: lastDay, packs });
export type ReceiveBody = z.infer<typeof ReceiveBody>;

export const CorrectStockBody = z.strictObject({
  id,
  lot,
  as: z.enum(['corrected', 'expired', 'returned', 'dispensed']),
  packs,
  reads: z.strictObject({ lot: lotNumber, expiry: lastDay }).optional(),
  reason,
});
export type CorrectStockBody = z.infer<typeof CorrectStockBody>;

export const TakeBackBody = z.strictObject({ reason });

export const GiveBody = z.strictObject({
  id,
  shelfItemId: z.string().min(1).max(100),
  packs: packs.optional(),
  lot: lot.optional(),
  reason,
});
export type GiveBody = z.infer<typeof GiveBody>;

/** What the practice counts, for the list of the shelf and for what to order. */
export interface StockView {
  readonly today: string;
  /** Null = not set. */
  readonly leadDays: number | null;
  readonly items: readonly (CountedItem & { readonly given: number; readonly since: string })[];
}

/** One entry of the stock book. */
export interface MoveView extends Lot {
  readonly id: string;
  readonly shelfItemId: string;
  readonly quantity: number;
  readonly reason: 'received' | 'dispensed' | 'expired' | 'corrected' | 'returned';
  readonly onDate: string;
  readonly visitId: string | null;
  readonly by: string;
  readonly note: string | null;
  readonly takenBack: string | null;
  /** The member who asks entered it today: it may be taken back without a reason. */
  readonly isMineToday: boolean;
}

/** What was given at a visit, and what there is to give. */
export interface GivenView {
  readonly today: string;
  readonly moves: readonly MoveView[];
  readonly counted: readonly CountedItem[];
}

export const RefillBody = z.strictObject({
  id,
  shelfItemId: z.string().min(1).max(100),
  lot: lot.optional(),
  /** The person was asked about pregnancy, allergy, medicines and illness, and nothing is new. */
  nothingNew: z.boolean(),
});
export type RefillBody = z.infer<typeof RefillBody>;

/** What of a closed visit may be given again today. */
export interface RefillView {
  readonly today: string;
  readonly notHere: string | null;
  readonly lines: readonly {
    readonly shelfItemId: string;
    readonly name: string;
    readonly state: 'may-be-given' | 'waits' | 'stopped';
    readonly says: string;
    /** Packs given from this visit so far. */
    readonly given: number;
    /** On what it goes; null = no signature is needed, or there is none. */
    readonly signedBy: SignedBy | null;
    /** Why the signature covers no further pack. */
    readonly over: SignatureCover['over'];
    readonly lastGivenOn: string | null;
  }[];
}
