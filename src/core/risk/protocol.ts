import type { SourceRef } from '../visit/answer.ts';
import type { Level } from './types.ts';

/** Side of the balance that an item stands on. For a favourable item ("regular dental care") it is 'protective', whatever a list makes of its absence. */
export type ItemRole = 'disease' | 'risk' | 'protective';

/** One thing that a published list asks, in our own words. */
export interface ItemDefinition {
  readonly id: string;
  readonly label: string;
  readonly group:
    | 'disease'
    | 'biological'
    | 'diet'
    | 'feeding'
    | 'saliva'
    | 'tooth'
    | 'behaviour'
    | 'medical'
    | 'family'
    | 'social'
    | 'protective';
  readonly role: ItemRole;
  /** A count is a whole number from 0. */
  readonly valueType: 'boolean' | 'count';
  /** Who can change it from today on: the person, the team by care given, or nobody (a look back, a medicine, a condition). */
  readonly changeable: 'person' | 'care' | 'no';
  /** Changing it limits what or when somebody eats, drinks or is fed: offered only where the safety rules allow it. */
  readonly limitsFood?: boolean | undefined;
  /** Stands on a list but cannot be had today: stays unknown, and is not counted among what is missing or possible. */
  readonly notAvailable?: string | undefined;
  readonly define?: string | undefined;
  /** Ages in completed years, half-open; absent = any. */
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
}

/** True when the item's value is known and fits. An unknown value never fits. `to: null` = no upper end; ends included. */
export type Condition = { readonly item: string } & ({ readonly is: boolean } | { readonly from: number; readonly to: number | null });

/** Ages in completed years, half-open. */
export interface AgeRange {
  readonly fromAgeYears?: number | undefined;
  readonly belowAgeYears?: number | undefined;
}

interface TableBase {
  readonly id: string;
  readonly edition: string;
  /** Neutral name for the screen; owner and citation are for the page of rules. */
  readonly screenName: string;
  readonly owner: string;
  readonly citation: string;
  readonly levels: readonly Level[];
  readonly applies: { readonly fromAgeYears: number; readonly belowAgeYears: number | null; readonly source: SourceRef };
  /** The published rule, step by step, in our own words. */
  readonly steps: readonly { readonly text: string; readonly source: SourceRef }[];
  readonly notes: readonly { readonly text: string; readonly source: SourceRef }[];
  readonly items: Readonly<Record<string, ItemDefinition>>;
  /** Remarks raised by the items and the level together; the words stand in `content/protocols/flags.ts`. */
  readonly remarks: readonly { readonly flag: string; readonly levels: readonly Level[]; readonly anyOf: readonly Condition[] }[];
  /** What the source gives as time between visits and between bitewings, months; empty where it gives none. */
  readonly recall: readonly RecallRow[];
}

export interface RecallRow {
  readonly level: Level;
  readonly recallMonths: readonly [number, number];
  readonly radiographMonths: readonly [number, number];
  readonly source: SourceRef;
}

/** Ticks for and against, weighed. */
export interface BalanceTable extends TableBase {
  readonly kind: 'balance';
  readonly rows: readonly {
    readonly item: string;
    readonly role: ItemRole;
    /** One tick when any of these holds. */
    readonly anyOf: readonly Condition[];
    readonly source: SourceRef;
  }[];
  /** Besides a disease tick, these alone give high. */
  readonly decisive: { readonly anyOf: readonly Condition[]; readonly source: SourceRef } | null;
  /** These lift high to extreme. `alsoJudgedHigh`: also a high that rests on our numbers, without a disease tick. */
  readonly lifts: { readonly anyOf: readonly Condition[]; readonly alsoJudgedHigh: boolean; readonly source: SourceRef };
  /** These alone give extreme where the practice reads the rule so (`lowSalivaMeansExtreme`). */
  readonly liftAloneSource: SourceRef | null;
  /** No low while one of these holds. */
  readonly barsLow: readonly Condition[];
  /** No low while one of `anyOf` holds and `settledBy` does not: dry mouth is to be expected, and normal saliva was not shown. */
  readonly suspicion: { readonly anyOf: readonly Condition[]; readonly settledBy: Condition; readonly source: SourceRef } | null;
  /** Numbers for the steps that the source leaves to judgement. */
  readonly defaults: {
    readonly lowMaxRisk: number;
    readonly lowMaxNet: number;
    readonly highMinRisk: number;
    readonly highMinNet: number;
    readonly source: SourceRef;
  };
}

/** Lines of 0, 1 or 10 points, added up. */
export interface ScoreTable extends TableBase {
  readonly kind: 'score';
  /** The first case that holds gives the points; none = 0. */
  readonly lines: readonly (AgeRange & {
    readonly item: string;
    readonly cases: readonly (AgeRange & { readonly when: Condition; readonly points: 1 | 10 })[];
    readonly source: SourceRef;
  })[];
  readonly moderateFrom: number;
  readonly highFrom: number;
}

/** Ticks in three columns; the fullest column gives the level unless an item decides. */
export interface ColumnsTable extends TableBase {
  readonly kind: 'columns';
  readonly rows: readonly {
    readonly item: string;
    readonly column: 'high' | 'moderate' | 'low';
    readonly anyOf: readonly Condition[];
    /** Alone gives high. */
    readonly decisive: boolean;
    /** False for an item of a later edition, which decides but is not in the totals of this one. */
    readonly countsAsTick: boolean;
    readonly source: SourceRef;
  }[];
  /** Numbers and choices that the source leaves to judgement: decisive list, ties, nothing ticked. */
  readonly judgement: SourceRef;
}

export type ProtocolTable = BalanceTable | ScoreTable | ColumnsTable;

export interface RiskSettings {
  /** The teaching-clinic reading: low saliva alone is extreme. */
  readonly lowSalivaMeansExtreme: boolean;
}
