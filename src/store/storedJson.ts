import type { PracticeSettings } from '../core/visit/types.ts';

/** JSON bodies of our own rows. They were checked before they were written, so reading trusts them. */
export interface StoredSettings {
  /** True for the demo practice, whose people and numbers are made up. */
  readonly invented: boolean;
  readonly settings: PracticeSettings;
}

export interface PatientProfile {
  readonly name: string;
  readonly language?: 'en' | 'es' | undefined;
  readonly interpreter?: string | undefined;
  readonly guardians?: readonly { readonly name: string; readonly relation?: string | undefined }[] | undefined;
  readonly homes?: readonly string[] | undefined;
  readonly permissions?: Readonly<Record<string, boolean>> | undefined;
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
}
