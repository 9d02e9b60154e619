import type { Bound } from '../reading/types.ts';
import type { MultiRule } from '../stats/multiRules.ts';

/** What was read when the control solution was swabbed. */
export interface Control {
  readonly id: string;
  readonly meterId: string;
  readonly lotId: string;
  /** Name of whoever took it; null = not noted. */
  readonly operator: string | null;
  /** UTC. */
  readonly takenAt: string;
  readonly rlu: number;
  readonly bound: Bound;
  readonly state: 'valid' | 'void';
  /** Why it does not count. */
  readonly voidReason: string | null;
  readonly note: ControlNote;
  readonly version: number;
}

/** How it was taken. What was not noted is absent. */
export interface ControlNote {
  readonly solution?: ControlSolution | undefined;
  readonly temperatureDegC?: number | undefined;
  readonly storage?: SwabStorage | undefined;
  /** What was done before it, where the one before was out of limits. */
  readonly did?: StopDone | undefined;
}

export interface ControlSolution {
  readonly name: string;
  /** The solution's own lot, as on its bottle. */
  readonly lot?: string | undefined;
}

export type SwabStorage = 'fridge' | 'room' | 'fridge-then-room' | 'other';

/** What the controls of one lot are held against, on the natural logarithm of RLU. */
export interface ControlTarget {
  readonly lotId: string;
  readonly meanLn: number;
  readonly sdLn: number;
  /** How many controls or pairs it comes from; 0 where it was typed. */
  readonly count: number;
  readonly from: 'first-controls' | 'comparison' | 'hand';
  /** UTC from which controls are held against it; absent = from the first on. */
  readonly since?: string | undefined;
  /** Who typed it, when `from` is `hand`. */
  readonly set?: { readonly by: string; readonly reason: string } | undefined;
}

/** A target that another has followed. */
export interface PastTarget extends ControlTarget {
  /** UTC up to which controls were held against it. */
  readonly until: string;
  /** The lot's first controls made it, so they were not judged by it. */
  readonly isFromItsFirst?: boolean | undefined;
}

export type ControlEvery =
  | { readonly kind: 'daily' }
  | { readonly kind: 'weekly-and-new-lot' }
  | { readonly kind: 'own'; readonly days: number };

/** When one meter gets a control, and what it is held against. */
export interface ControlPlan {
  readonly meterId: string;
  readonly every: ControlEvery;
  /** The control rules in use; their codes stay in JSON, a screen says "control rule 2 of 6". */
  readonly rules: readonly MultiRule[];
  readonly solution: ControlSolution;
  /** A swab and its share of the solution, in the currency of the practice; absent = not known. */
  readonly swabPriceCents?: number | undefined;
  /** Targets the practice has set; a lot without one takes its own first controls. */
  readonly targets: readonly ControlTarget[];
  /** Those that were followed by others, oldest first: the controls of their time stay held against them. */
  readonly pastTargets?: readonly PastTarget[] | undefined;
}

/** A member with the right has said that readings may count although this control was out of limits, for the rest of its day. */
export interface StopOverride {
  readonly controlId: string;
  readonly meterId: string;
  /** Absent = it was the meter's own check that did not pass, so readings with every lot may count. */
  readonly lotId?: string | undefined;
  /** Local date on which it holds. */
  readonly onDate: string;
  readonly by: string;
  /** UTC. */
  readonly at: string;
  readonly reason: string;
}

/** What a practice does about a control out of limits. */
export const STOP_ANSWERS = ['repeated-control', 'new-solution', 'new-lot', 'meter-cleaned', 'other'] as const;
export type StopAnswer = (typeof STOP_ANSWERS)[number];

export interface StopDone {
  readonly answer: StopAnswer;
  /** In the practice's own words; with `other` there are some. */
  readonly note?: string | undefined;
}

/** The record that ends a stop: what was done, and the control in line that shows it. */
export interface StopResolution extends StopDone {
  /** The controls out of limits that it answers. */
  readonly outIds: readonly string[];
  readonly meterId: string;
  /** Of the stop. */
  readonly lotId: string;
  /** In line, of this lot; or of the lot that was opened in its place, and then this lot is put away. */
  readonly controlId: string;
  readonly by: string;
  /** UTC. */
  readonly at: string;
}

/** What a member with the right has said of the readings before a stop; taken back only by another word. */
export interface ReadingsDecision {
  readonly decision: 'under-question' | 'left';
  readonly by: string;
  /** UTC. */
  readonly at: string;
  readonly reason: string;
  /** The readings it changed, and how each stood before. */
  readonly readings: readonly { readonly id: string; readonly was: 'valid' | 'flagged' }[];
}

/** The readings between the last control in line and the one that was out of limits. */
export interface StopReadings {
  /** The first control out of limits. */
  readonly outId: string;
  readonly meterId: string;
  readonly lotId: string;
  /** UTC of the last control in line; null = there was none with this lot. */
  readonly from: string | null;
  /** UTC of the control out of limits. */
  readonly until: string;
  /** Which rule fired, in words. */
  readonly says: string;
  /** Oldest first; the newest holds. */
  readonly decisions: readonly ReadingsDecision[];
}
