import type { SourceRef } from '../visit/answer.ts';

export type Bound = 'exact' | 'at-most' | 'at-least';

/** A meter as its own instructions describe it. Limits and cut-off belong to the meter; there is no default cut-off. */
export interface Meter {
  readonly id: string;
  readonly name: string;
  readonly lowestRlu: number;
  readonly highestRlu: number;
  readonly cutoffRlu: number;
  readonly countdownS: number;
  /** Coefficient of variation of one reading of one swab, fraction. `assumed` until the practice has measured its own. */
  readonly cvAnalytical: number;
  readonly cvAnalyticalAssumed: boolean;
  /** Day-to-day coefficient of variation within a person, fraction. */
  readonly cvWithinPerson: number;
  readonly cvWithinPersonAssumed: boolean;
  /** What the practice's own reported studies found on this meter. Absent = none yet: the figures above then stand alone. */
  readonly own?: readonly OwnEstimate[] | undefined;
}

/**
 * A part of the noise of readings, each a variance of ln RLU: one swab after another with nothing else changed; between hands; between
 * swab lots; between two meters of one model; between days of one person.
 */
export const NOISE_PARTS = ['repeatability', 'operator', 'lot', 'meter', 'withinPerson'] as const;
export type NoisePart = (typeof NOISE_PARTS)[number];

export const STUDY_KINDS = ['hands', 'lots', 'paired-days', 'meters', 'new-lot', 'cutoff'] as const;
export type StudyKind = (typeof STUDY_KINDS)[number];

/** One part of the noise as one reported study of the practice estimated it. */
export interface OwnEstimate {
  readonly component: NoisePart;
  /** Of ln RLU, as computed: below 0 where a study saw less than chance alone would give. Repeatability is always above 0. */
  readonly variance: number;
  /** Above 0; need not be whole. */
  readonly degreesOfFreedom: number;
  /** Readings that the estimate rests on. */
  readonly readings?: number | undefined;
  readonly studyId: string;
  /** Local date, ISO. */
  readonly reportedOn: string;
  readonly kind: StudyKind;
}

export interface SwabLot {
  readonly id: string;
  readonly name: string;
  /** Last local date on which the lot may be used, ISO. */
  readonly expiresOn: string;
  /** With the lot before it, by a reported study; absent = not yet. */
  readonly compared?: LotComparedWith | undefined;
  /** Why it went into use without that. */
  readonly uncompared?: { readonly by: string; readonly at: string; readonly reason: string } | undefined;
}

export interface LotComparedWith {
  readonly lotId: string;
  readonly studyId: string;
  /** Local date, ISO. */
  readonly onDate: string;
  readonly verdict: 'same-within' | 'differs' | 'too-few';
}

/** Why there is no number, in the order in which it is asked. A failed swab is not a second swab; a visit without a reading is complete. */
export const NOT_TAKEN_REASONS = [
  'declined',
  'no-site',
  'appliance',
  'bleeding',
  'calculus',
  'could-not-tolerate',
  'meter-out',
  'control-out',
  'no-stock',
  'other',
] as const;
export type NotTakenReason = (typeof NOT_TAKEN_REASONS)[number];

/** What was noted while the swab was taken. Absent = unknown, never "fine". Times are ISO with zone or UTC. */
export interface SwabReading {
  /** When the swab met its reagents and the meter's count-down began. */
  readonly activatedAt?: string | undefined;
  /** When the number was read off the meter. */
  readonly takenAt?: string | undefined;
  readonly rlu?: number | undefined;
  readonly bound?: Bound | undefined;
  readonly lotId?: string | undefined;
  readonly operator?: { readonly name: string; readonly trained: boolean } | undefined;
  readonly site?: 'lower-front-tongue-side' | 'other' | undefined;
  readonly beforeCleaning?: boolean | undefined;
  readonly minutesSinceEating?: number | undefined;
  readonly minutesSinceBrushing?: number | undefined;
  readonly minutesSinceRinsing?: number | undefined;
  readonly failed?: boolean | undefined;
  readonly notTaken?: NotTakenReason | undefined;
  /** A few words beside `notTaken: 'other'`. */
  readonly notTakenNote?: string | undefined;
}

/** An earlier reading of the same person. */
export interface PastReading {
  readonly takenAt: string;
  readonly rlu: number;
  readonly bound: Bound;
  readonly state: 'valid' | 'flagged' | 'void';
  readonly meterId: string;
  /** Who took it, and from which lot. Absent = not known, so neither is taken to be the same as today's. */
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
}

/** A swab of the person for a study of the practice: it took the plaque away as any other, and its number is for the study alone. */
export interface StudySwab {
  readonly takenAt: string;
}

/** One line of the table of conditions (`content/swabConditions.ts`). */
export interface SwabCondition {
  readonly id: string;
  readonly label: string;
  /** What a failing condition does to the reading. */
  readonly failing: 'not-counted' | 'flag';
  /** What an unknown condition does: `list` = it stands among the conditions, and no sentence speaks of it. */
  readonly unknown: 'flag' | 'say' | 'list';
  /** Number used by the condition, e.g. 24 (hours) or 30 (minutes). */
  readonly limit?: number | undefined;
  readonly limitUnit?: 'h' | 'min' | undefined;
  readonly source: SourceRef;
}

export interface ConditionResult {
  readonly id: string;
  readonly state: 'met' | 'failing' | 'unknown';
  /** Short clause in plain words, e.g. "taken after polishing". */
  readonly says: string;
  /** A failing condition that a named member has made weaker than the table says, with a reason. */
  readonly effect?: 'flag' | undefined;
}

export type ReadingState = 'valid' | 'flagged' | 'void' | 'failed' | 'not-taken';

/** The reading as the screen, the record and the leaflet rules use it. Sentences follow the honest wording. */
export interface ReadingAssessment {
  readonly state: ReadingState;
  /** Only a valid or flagged reading with a number counts for any decision. */
  readonly counted: boolean;
  readonly conditions: readonly ConditionResult[];
  readonly rlu?: number | undefined;
  readonly bound?: Bound | undefined;
  readonly verdict?: 'below' | 'too-close' | 'above' | undefined;
  readonly interval?: { readonly lowRlu: number; readonly highRlu: number } | undefined;
  readonly probabilityAbove?: number | undefined;
  readonly settleChance?: number | undefined;
  readonly daysToDecide?: number | null | undefined;
  readonly change?:
    | {
        readonly verdict: 'rise' | 'fall' | 'within-noise';
        readonly sincePast: PastReading;
        readonly riseFraction: number;
        readonly fallFraction: number;
      }
    | undefined;
  /** First sentence: number and verdict. */
  readonly headline: string;
  /** What to do with it today, what it is for and what it does not say; always shown beside the number. */
  readonly sentences: readonly string[];
  readonly sources: readonly SourceRef[];
}
