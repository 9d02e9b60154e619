/** What the pages send and read about signatures. Bodies are strict; the views are built by the server, so they are trusted. */
import { z } from 'zod';
import { MOST_PACKS_SIGNED } from '../core/regimen/signatureCover.ts';
import type { RefusedItem, SignedItem } from '../core/regimen/types.ts';
import type { PrescriptionText } from '../core/visit/prescriptionTexts.ts';
import type { PastSignature } from '../core/visit/withReleases.ts';

const itemId = z.string().min(1).max(100);
const packs = z.int().min(1).max(MOST_PACKS_SIGNED).optional();
const reason = z.string().trim().min(1).max(500);

export const SignBody = z.strictObject({
  shelfItemId: itemId,
  override: z.strictObject({ ruleId: z.string(), reason }).optional(),
  /** Signs on this standing order instead of in person. */
  standingOrderId: itemId.optional(),
  /** Packs that the signature covers in all; absent = one. */
  packs,
  /** Last day on which a pack may go by it. */
  until: z.iso.date().optional(),
});
export const RefuseBody = z.strictObject({ shelfItemId: itemId, reason });
export const WithdrawBody = z.strictObject({ shelfItemId: itemId, reason: reason.optional() });
export const PrintedBody = z.strictObject({ what: z.enum(['leaflet', 'prescriptions']) });

export const NewStandingOrder = z.strictObject({
  name: z.string().trim().min(1).max(200),
  /** From this day on. */
  date: z.iso.date(),
  /** To this day; absent = until it is withdrawn. */
  until: z.iso.date().optional(),
  shelfItemIds: z.array(itemId).min(1).max(200),
  /** Packs that a signature on it may cover in all; absent = one. */
  packs,
});
export type NewStandingOrder = z.infer<typeof NewStandingOrder>;

/** What was signed and refused at a visit, after a change of it. */
export interface Releases {
  readonly signed: readonly SignedItem[];
  readonly refused: readonly RefusedItem[];
}

export interface StandingOrderView extends NewStandingOrder {
  readonly id: string;
  readonly version: number;
  readonly signedBy: string;
  /** Today it may be signed on. */
  readonly holds: boolean;
  readonly withdrawnBy: { readonly name: string; readonly at: string } | null;
}

/** One item that waits, with what a member looks at before signing. */
export interface SigningLine {
  readonly visitId: string;
  readonly shelfItemId: string;
  readonly person: string;
  readonly ageYears: number;
  readonly ageMonths: number;
  readonly onDate: string;
  readonly isOpen: boolean;
  /** By ingredient and strength. */
  readonly item: string;
  readonly directions: string;
  readonly because: readonly string[];
  /** "high, confirmed"; null = no level is confirmed. */
  readonly level: string | null;
  readonly cautions: readonly string[];
  /** Questions of the safety check that are not known. */
  readonly notKnown: readonly string[];
  readonly askedBy: string;
  /** UTC. */
  readonly since: string;
  /** Standing orders that name it and hold: with one of them a hygienist may sign. */
  readonly orders: readonly SigningOrder[];
  /** Used at home, so that a signature may say for how many packs and to which day. */
  readonly isForHome: boolean;
}

/** A standing order as the one who signs on it needs it. */
export interface SigningOrder extends Pick<StandingOrderView, 'id' | 'name' | 'date' | 'until' | 'packs'> {
  readonly by: string;
}

export interface SigningView {
  /** Of the whole practice. */
  readonly count: number;
  /** Who could sign in person. */
  readonly signers: readonly string[];
  /** Empty for members who may not sign anything. */
  readonly lines: readonly SigningLine[];
}

export interface PrescriptionsView {
  readonly practice: string;
  readonly invented: boolean;
  readonly person: string;
  readonly birthDate: string;
  readonly onDate: string;
  readonly items: readonly PrescriptionText[];
  /** Left out, because their signature held to a day before today. */
  readonly past: readonly PastSignature[];
}
