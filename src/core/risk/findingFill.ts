import type { SourceRef } from '../visit/answer.ts';
import type { Finding } from '../visit/types.ts';

/** How what was seen on the teeth fills an item. Rows for the same item and answers to questions are joined. */
export interface FindingFill {
  readonly item: string;
  readonly kinds: readonly Finding['kind'][];
  readonly onlyNew?: true | undefined;
  /** Absent = any surface, also where none is noted. */
  readonly onlySurfaces?: readonly NonNullable<Finding['surface']>[] | undefined;
  readonly notSurfaces?: readonly NonNullable<Finding['surface']>[] | undefined;
  readonly onlyMilkTeeth?: true | undefined;
  /**
   * What no such finding means once everything was examined. `false`: absent. `nothing`: looking does not tell, ask.
   * Without "everything examined" it never means absent.
   */
  readonly absence: 'false' | 'nothing';
  /** A finding of these kinds that is not new leaves the item unknown: it may have appeared within the look-back. */
  readonly oldLeavesUnknown?: true | undefined;
  /** The item is a count of findings or of teeth. From `enough` up, the number found settles the item even where more may be there. */
  readonly count?: { readonly of: 'findings' | 'teeth'; readonly enough: number } | undefined;
  readonly source: SourceRef;
}

/** Two items that cannot both hold: where `when` is true, `item` is false. */
export interface ItemExclusion {
  readonly item: string;
  readonly when: string;
}
