import type { SourceRef } from '../visit/answer.ts';

/** Value of one list item; absent or undefined = unknown. Item ids are those of `content/protocols/items.ts`. */
export type ItemValue = boolean | number;
export type Items = Readonly<Record<string, ItemValue | undefined>>;

export type Level = 'low' | 'moderate' | 'high' | 'extreme';

/** What one published list says of one set of items. */
export interface RiskResult {
  readonly protocol: string;
  readonly edition: string;
  readonly screenName: string;
  readonly levels: readonly Level[];
  /** The level to show: unknown items not ticked, or null where no level may be said (see `notYet`). */
  readonly level: Level | null;
  /** The level with unknown items not ticked, also where `notYet` withholds it. For the record and the calculators, never alone on a screen. */
  readonly levelUnknownNotTicked: Level;
  /** Every level reachable by filling the unknown items, lowest first. */
  readonly possibleLevels: readonly Level[];
  /** True when possibleLevels has more than one member, or the published rule leaves the step to judgement. */
  readonly needsConfirmation: boolean;
  /**
   * Set when the level would read low while a disease item is unknown: "not yet assessable, at least ...".
   * `atLeast` is the lowest level that is not excluded; `missing` the unknown disease items.
   */
  readonly notYet?: { readonly atLeast: Level; readonly missing: readonly string[] } | undefined;
  /** Ticks or score: {disease, risk, protective}, {score}, {high, moderate, low}. */
  readonly counts: Readonly<Record<string, number>>;
  /** The level depends on numbers that the source leaves to judgement and that are our proposal. */
  readonly usesProposalDefaults: boolean;
  readonly flags: readonly string[];
  /** Ticked items that push up, strongest first; `changeable` = the person can change it. */
  readonly drivers: readonly Driver[];
  readonly protections: readonly Driver[];
  /** Unknown items, those that could change the level first. */
  readonly missing: readonly MissingItem[];
  readonly sources: readonly SourceRef[];
}

export interface Driver {
  readonly item: string;
  readonly role: 'disease' | 'risk' | 'protective';
  readonly decisive: boolean;
  readonly changeable: boolean;
  readonly source: SourceRef;
}

export interface MissingItem {
  readonly item: string;
  readonly role: 'disease' | 'risk' | 'protective';
  /** Filling this item alone can move the level (given what else is known, others left unknown). */
  readonly couldChangeLevel: boolean;
  /** The levels that filling this item alone can give. */
  readonly levelsIfFilled: readonly Level[];
}

/** A smallest set of changes that moves the level on this list; found by exact search. */
export interface LevelChange {
  readonly to: Level;
  readonly changes: readonly { readonly item: string; readonly from: ItemValue | undefined; readonly to: ItemValue }[];
}
