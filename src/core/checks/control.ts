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
  /** How many controls or pairs it comes from. */
  readonly count: number;
  readonly from: 'first-controls' | 'comparison';
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
  /** Targets the practice has set; a lot without one takes its own first controls. */
  readonly targets: readonly ControlTarget[];
}

/** A member with the right has said that readings may count although this control was out of limits, for the rest of its day. */
export interface StopOverride {
  readonly controlId: string;
  readonly meterId: string;
  readonly lotId: string;
  /** Local date on which it holds. */
  readonly onDate: string;
  readonly by: string;
  /** UTC. */
  readonly at: string;
  readonly reason: string;
}
