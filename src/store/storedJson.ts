import type { VisitCorrection } from '../core/visit/correction.ts';
import type { PracticeSettings, VisitInput } from '../core/visit/types.ts';

/** JSON bodies of our own rows. They were checked before they were written, so reading trusts them. */
export interface StoredSettings {
  /** True for the demo practice, whose people and numbers are made up. */
  readonly invented: boolean;
  readonly settings: PracticeSettings;
  /** Minutes without a key after which the screen hides; absent = as proposed. */
  readonly hideAfterMinutes?: number | undefined;
}

/** What was said at a visit besides the answers, findings and the reading, and what was corrected after it was closed. */
export type VisitSaid = Pick<
  VisitInput['visit'],
  'language' | 'agreed' | 'stopUsing' | 'nextOn' | 'speaker' | 'released' | 'goals' | 'goalsSince' | 'used' | 'acidDay'
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
  /** Packs that a signature on it may cover in all; absent = one. */
  readonly packs?: number | undefined;
  readonly withdrawn?: boolean | undefined;
  /** UTC. */
  readonly withdrawnBy?: { readonly name: string; readonly at: string } | undefined;
}

/** Beside a reading of a study: which swab of its run sheet it is. */
export interface StudyRunNote {
  readonly run: number;
}
