import type { SourceRef } from '../visit/answer.ts';
import type { Jurisdiction, ShelfItem } from './types.ts';

/**
 * How a kind of product may be given at a place: sold to anyone, sold by a pharmacist without a prescription, used by the professional at
 * the visit, on prescription, by the dentist alone, or not at all.
 */
export const LEGAL_STATUSES = ['over-the-counter', 'pharmacy', 'professional', 'prescription', 'dentist', 'not-sold'] as const;
export type LegalStatus = (typeof LEGAL_STATUSES)[number];

/** Places whose law the sources tell something of. */
export type KnownPlace = 'US' | 'UK' | 'EU';

export interface StatedStatus {
  readonly status: LegalStatus;
  readonly source: SourceRef;
}

/** What the sources say of one agent. An agent with `everywhere` depends on no place; a place without an entry is not known. */
export interface LegalRow {
  readonly agentId: string;
  readonly everywhere?: StatedStatus | undefined;
  readonly at?: Readonly<Partial<Record<KnownPlace, StatedStatus>>> | undefined;
}

/** Statuses that the practice has looked up and set itself, by agent id. */
export type OwnLegalStatuses = Readonly<Record<string, LegalStatus>>;

export interface Place {
  readonly jurisdiction: Jurisdiction;
  readonly legal?: OwnLegalStatuses | undefined;
}

/**
 * The status of an agent where the practice works: what the practice set itself goes first, then what the sources say of the place.
 * @returns undefined where neither tells: whatever depends on it then asks first
 */
export function legalStatusOf(agentId: string, { jurisdiction, legal }: Place, rows: readonly LegalRow[]): LegalStatus | undefined {
  if (legal && Object.hasOwn(legal, agentId)) return legal[agentId];
  return presetStatus(agentId, jurisdiction, rows)?.status;
}

/** What the sources say of an agent at a place. */
export function presetStatus(agentId: string, jurisdiction: Jurisdiction, rows: readonly LegalRow[]): StatedStatus | undefined {
  const row = rows.find((r) => r.agentId === agentId);
  if (row?.everywhere) return row.everywhere;
  return jurisdiction === 'unknown' || jurisdiction === 'by-hand' ? undefined : row?.at?.[jurisdiction];
}

/** Who may release what has this status. */
export function releaseUnder(status: LegalStatus | undefined): ShelfItem['release'] {
  if (status === 'prescription') return 'prescription';
  return status === 'dentist' || status === undefined || status === 'not-sold' ? 'dentist' : 'anyone';
}
