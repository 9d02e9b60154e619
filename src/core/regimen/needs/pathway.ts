import type { Level } from '../../risk/types.ts';
import type { SourceRef } from '../../visit/answer.ts';

/** What published pathways speak of, in the order in which they are laid side by side. */
export const PATHWAY_TOPICS = [
  'home-fluoride',
  'professional-fluoride',
  'antimicrobial',
  'sweetener',
  'acid-control',
  'calcium-phosphate',
  'sealing',
  'recall',
  'bitewings',
] as const;
export type PathwayTopic = (typeof PATHWAY_TOPICS)[number];

export interface Given {
  /** As the pathway has it, in our words. The same words mean the same. */
  readonly says: string;
  /** Agents that it names: the label ages of this place are held against them. */
  readonly agentIds?: readonly string[] | undefined;
}

/** What a pathway gives to some levels and ages. */
export interface PathwayRow {
  /** Levels that it stands for. */
  readonly levels: readonly Level[];
  /** What the pathway itself calls the row: "high", "raised risk". */
  readonly called: string;
  /** Completed years, half-open. */
  readonly fromAgeYears: number;
  readonly belowAgeYears: number;
  /** Only with a root lesion that is not inactive; it stands before rows that ask for none. */
  readonly withRootLesion?: true | undefined;
  readonly gives: Readonly<Partial<Record<PathwayTopic, Given>>>;
  readonly source: SourceRef;
}

/** A published pathway of care, under a neutral name with its year. */
export interface Pathway {
  readonly id: string;
  readonly name: string;
  readonly edition: string;
  /** Why it gives nothing where no row fits. */
  readonly speaksOf: string;
  readonly rows: readonly PathwayRow[];
}
