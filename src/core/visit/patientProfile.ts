import type { LeafletLanguage } from '../leaflet/types.ts';

/** Who a person is to the practice besides the birth date. Absent = not asked, never "no". */
export interface PatientProfile {
  readonly name: string;
  /** The practice's own number of the chart, as its other programs use it. */
  readonly chartNumber?: string | undefined;
  readonly language?: LeafletLanguage | undefined;
  /** Whether what the person takes home is set in large print. */
  readonly largePrint?: boolean | undefined;
  /** Language to interpret from, in words; an empty text = asked, none needed. */
  readonly interpreter?: string | undefined;
  readonly guardians?: readonly Guardian[] | undefined;
  /** Where the person lives, if in more than one place: each home gets a leaflet of its own. */
  readonly homes?: readonly Home[] | undefined;
  readonly permissions?: Readonly<Partial<Record<PermissionKind, Permission | undefined>>> | undefined;
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
