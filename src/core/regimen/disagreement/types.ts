import type { SourceRef } from '../../visit/answer.ts';
import type { EvidenceLine } from '../agentFacts.ts';
import type { Interaction, SafetyRule } from '../tables.ts';

/** What one position does to the tables of this edition. Nothing named = they stand as they are. */
export interface TableChange {
  /** Agents that are taken from then on only by a dentist's own choice, and why. */
  readonly byChoiceOnly?: { readonly agentIds: readonly string[]; readonly because: EvidenceLine } | undefined;
  /** Parts of safety rules, by their id. */
  readonly rules?: Readonly<Record<string, Partial<Omit<SafetyRule, 'id'>>>> | undefined;
  readonly moreRules?: readonly SafetyRule[] | undefined;
  /** Parts of interactions, by their id. */
  readonly interactions?: Readonly<Record<string, Partial<Omit<Interaction, 'id'>>>> | undefined;
  /** Safety rules and interactions that fall away, by their id. */
  readonly without?: readonly string[] | undefined;
  /** Keys of the sources whose upper levels of fluoride keep a product out; those of the others are shown and keep nothing out. */
  readonly upperLevelsOf?: readonly string[] | undefined;
}

export interface Position {
  readonly id: string;
  /** A clause that stands for itself: "from 8 years". */
  readonly says: string;
  readonly sources: readonly SourceRef[];
}

interface Question {
  readonly id: string;
  readonly question: string;
}

/** The practice chooses one position; until it has, `unset` holds. */
export interface SettableDisagreement extends Question {
  readonly kind: 'setting';
  readonly positions: readonly (Position & { readonly change: TableChange })[];
  readonly unset: string;
  /** Why that one holds until somebody chooses. */
  readonly unsetBecause: 'stricter' | 'proposal';
  /** What the choice changes, one sentence. */
  readonly changes: string;
}

/** Set in another place, or not at all: the sentence says where, or why nothing follows from it. */
export interface ToldDisagreement extends Question {
  readonly kind: 'elsewhere' | 'nothing-to-set';
  readonly positions: readonly Position[];
  readonly says: string;
}

export type Disagreement = SettableDisagreement | ToldDisagreement;

/** The position taken, by the id of the disagreement. */
export type ChosenPositions = Readonly<Record<string, string>>;
