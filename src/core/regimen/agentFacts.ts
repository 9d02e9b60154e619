import type { SourceRef } from '../visit/answer.ts';
import type { KnownPlace } from './legalStatus.ts';

/**
 * What an estimate is. Shares, reductions and risk differences are fractions of 1; ratios and mean differences stand as they are.
 * `lower-risk`: how much lower than with what it was compared to.
 */
export type Measure =
  | 'prevented-fraction'
  | 'lower-risk'
  | 'share-arrested'
  | 'risk-difference'
  | 'risk-ratio'
  | 'rate-ratio'
  | 'odds-ratio'
  | 'mean-difference'
  | 'standardised-mean-difference';

export type Certainty = 'high' | 'moderate' | 'low' | 'very-low' | 'insufficient' | 'not-rated';

/** One figure of one trial or review. */
export interface Effect {
  readonly id: string;
  /** What was compared with what. */
  readonly what: string;
  readonly outcome: string;
  readonly measure: Measure;
  /** null: nothing that could be used as a figure; `remark` says why. */
  readonly estimate: number | null;
  /** 95 %. */
  readonly interval?: readonly [low: number, high: number] | undefined;
  readonly people: string;
  /** Absent: not told. */
  readonly trials?: number | undefined;
  readonly certainty: Certainty;
  readonly remark?: string | undefined;
}

/** What a guideline or a public body holds. */
export interface Position {
  readonly rating: 'in-favour' | 'expert-opinion' | 'insufficient' | 'not-recommended' | 'against';
}

/** A statement of the evidence, for clinicians. Status stands in the source and is shown beside it, never on a leaflet. */
export interface EvidenceLine {
  readonly says: string;
  readonly source: SourceRef;
  readonly effect?: Effect | undefined;
  readonly position?: Position | undefined;
}

/** A dose as a label or guideline has it; both ends of a range included. */
export interface StatedDose {
  /** Whose label or guideline; absent = of no place. */
  readonly place?: KnownPlace | undefined;
  /** Completed years, half-open. */
  readonly fromAgeYears: number;
  readonly belowAgeYears?: number | undefined;
  readonly timesPerDay?: readonly [number, number] | undefined;
  readonly timesPerYear?: readonly [number, number] | undefined;
  readonly amountG?: readonly [number, number] | undefined;
  readonly amountMl?: readonly [number, number] | undefined;
  readonly gramsPerDay?: readonly [number, number] | undefined;
  readonly minutes?: number | undefined;
  readonly courseDays?: number | undefined;
  readonly says: string;
  readonly source: SourceRef;
}

/** What is known of an agent beyond how it is given. */
export interface AgentFacts {
  readonly evidence: readonly EvidenceLine[];
  readonly doses: readonly StatedDose[];
  readonly harms: readonly EvidenceLine[];
  /** Nobody is promised prevention by it, whatever its figures. */
  readonly noPrevention?: EvidenceLine | undefined;
}
