import type { LeafletLanguage } from '../core/leaflet/types.ts';
import type { VisitCorrection } from '../core/visit/correction.ts';
import type { PracticeSettings, VisitInput } from '../core/visit/types.ts';

/** JSON bodies of our own rows. They were checked before they were written, so reading trusts them. */
export interface StoredSettings {
  /** True for the demo practice, whose people and numbers are made up. */
  readonly invented: boolean;
  readonly settings: PracticeSettings;
}

/** Who a person is to the practice besides the birth date. Absent = not asked, never "no". */
export interface PatientProfile {
  readonly name: string;
  /** The practice's own number of the chart, as its other programs use it. */
  readonly chartNumber?: string | undefined;
  readonly language?: LeafletLanguage | undefined;
  /** Language to interpret from, in words; an empty text = asked, none needed. */
  readonly interpreter?: string | undefined;
  readonly guardians?: readonly Guardian[] | undefined;
  /** Where the person lives, if in more than one place: each home gets a leaflet of its own. */
  readonly homes?: readonly Home[] | undefined;
  readonly permissions?: Readonly<Partial<Record<PermissionKind, Permission>>> | undefined;
}

export interface Guardian {
  readonly name: string;
  /** "mother", "foster carer", in words. */
  readonly relation?: string | undefined;
  readonly phone?: string | undefined;
  /** May say yes to care. Absent = not asked. */
  readonly mayConsent?: boolean | undefined;
}

export interface Home {
  /** "with her father", in words; printed on the leaflet. */
  readonly name: string;
  readonly language: LeafletLanguage;
}

export type PermissionKind = 'care' | 'messages' | 'use-of-data';

export interface Permission {
  readonly given: boolean;
  /** Who said so: the person, or a guardian by name. */
  readonly by: string;
  /** Local date. */
  readonly on: string;
}

/** What was said at a visit besides the answers, findings and the reading, and what was corrected after it was closed. */
export type VisitSaid = Pick<
  VisitInput['visit'],
  'language' | 'agreed' | 'stopUsing' | 'nextOn' | 'speaker' | 'goals' | 'goalsSince' | 'used'
> & {
  /** Oldest first. */
  readonly corrections?: readonly VisitCorrection[] | undefined;
};

/** A member with the right to sign has looked at the item and does not release it. */
export interface Refusal {
  readonly by: string;
  /** UTC. */
  readonly at: string;
  readonly reason: string;
}

/** Says who may release which items without a signature of the day. */
export interface StandingOrder {
  readonly name: string;
  /** Local date from which it holds. */
  readonly date: string;
  /** Last local date on which it holds; absent = until it is withdrawn. */
  readonly until?: string | undefined;
  /** Name of the member who signed it. */
  readonly signedBy: string;
  readonly shelfItemIds: readonly string[];
  readonly withdrawn?: boolean | undefined;
  /** UTC. */
  readonly withdrawnBy?: { readonly name: string; readonly at: string } | undefined;
}
