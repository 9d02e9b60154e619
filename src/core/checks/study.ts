import type { Bound, OwnEstimate, StudyKind } from '../reading/types.ts';

export type StudyState = 'planned' | 'running' | 'reported' | 'dropped';

/** One swab of the run sheet, in the order in which it is taken. */
export interface StudyRun {
  readonly index: number;
  /** The solution, coupon or person that is swabbed, under a label without a name. */
  readonly part?: string | undefined;
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
  /** Where the study compares meters; otherwise the study's own. */
  readonly meterId?: string | undefined;
  readonly replicate: number;
}

export interface StudyDesign {
  readonly medium: 'atp-solution' | 'coated-coupon' | 'people';
  readonly parts: number;
  readonly operators: readonly string[];
  readonly replicates: number;
  /** The order of the run sheet follows from it. */
  readonly seed: number;
  /** Half width of the interval that was wanted, as a ratio above 1. */
  readonly wantedRatio?: number | undefined;
}

/** What a study says of one part of the noise, before it is known which study of which day that was. */
export type StudyEstimate = Pick<OwnEstimate, 'component' | 'variance' | 'degreesOfFreedom' | 'readings'>;

export interface StudyReport {
  readonly by: string;
  /** UTC. */
  readonly at: string;
  /** Local date. */
  readonly onDate: string;
  /** In plain words, the first of them the answer. */
  readonly sentences: readonly string[];
  readonly estimates: readonly StudyEstimate[];
  /** Everything computed, for the table; its shape belongs to the kind of study. */
  readonly body: unknown;
}

/** A swab study: planned, taken run by run, reported or given up. */
export interface Study {
  readonly id: string;
  readonly kind: StudyKind;
  readonly meterId: string;
  readonly lotIds: readonly string[];
  readonly plannedBy: string;
  /** UTC. */
  readonly plannedAt: string;
  readonly design: StudyDesign;
  readonly runs: readonly StudyRun[];
  readonly state: StudyState;
  readonly report?: StudyReport | undefined;
  readonly dropped?: { readonly by: string; readonly at: string; readonly reason: string } | undefined;
}

/** Which chart stands behind one person of a study; null = the link was taken away again. */
export interface StudyPerson {
  readonly patientId: string | null;
}

/** The solutions, coupons or people of a study, each once, in the order of its run sheet. */
export const partsOf = ({ runs }: Pick<Study, 'runs'>): string[] => [...new Set(runs.flatMap(({ part }) => part ?? []))];

/** One reading of a study. */
export interface StudyReading {
  readonly id: string;
  readonly studyId: string;
  readonly run: number;
  readonly meterId: string;
  readonly lotId: string | null;
  readonly operator: string | null;
  /** UTC. */
  readonly takenAt: string;
  readonly rlu: number;
  readonly bound: Bound;
  readonly state: 'valid' | 'void';
  readonly voidReason: string | null;
  readonly version: number;
}
