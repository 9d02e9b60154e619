import type { Level } from '../../risk/types.ts';
import type { SourceRef } from '../../visit/answer.ts';

/** What became of people of a level, where somebody followed them. */
export interface LevelOutcome {
  readonly id: string;
  /** Lists whose levels these are. */
  readonly protocols: readonly string[];
  /** Completed years, half-open. */
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  /** Events per person: a share of people, or a mean count. */
  readonly byLevel: Readonly<Partial<Record<Level, number>>>;
  readonly unit: 'share-of-people' | 'count-per-person';
  /** Ends "At level high, ...". `#` stands for the figure. */
  readonly says: string;
  readonly source: SourceRef;
}

/** A number needed to treat as a source prints it, at its own baseline. */
export interface PublishedNumber {
  readonly number: number;
  readonly baseline: number;
  readonly says: string;
  readonly source: SourceRef;
}

/** One pooled figure of one review. */
export interface PooledFigure {
  /** What it is about, for where the figure itself is not shown. */
  readonly of: string;
  /** The figure with interval, people and trials. */
  readonly says: string;
  /** Share prevented, with its interval from low to high; absent where it is none of a share. */
  readonly prevented?: { readonly at: number; readonly range?: readonly [low: number, high: number] | undefined } | undefined;
  readonly source: SourceRef;
}

/** Which one pooled figure stands for an agent at an age, and whether it may be set on a level's outcome. */
export interface BenefitRow {
  readonly agentId: string;
  /** Age of the people in the trials, completed years, half-open. */
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  readonly figure: PooledFigure;
  /** The outcome and its levels that count what the trials counted; absent = none does. */
  readonly combine?: { readonly outcomeId: string; readonly levels: readonly Level[]; readonly caveat: string } | undefined;
  /** Why no number is worked out where it is not combined. */
  readonly notCombined: string;
  readonly published?: readonly PublishedNumber[] | undefined;
}

export interface BenefitTables {
  readonly outcomes: readonly LevelOutcome[];
  readonly rows: readonly BenefitRow[];
}
