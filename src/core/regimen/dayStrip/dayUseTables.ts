import type { SourceRef } from '../../visit/answer.ts';
import type { NamedRhythms, UsualRhythm } from './rhythmOfDay.ts';
import type { StripTimes } from './types.ts';

/** What the placing of uses in a person's day goes by, besides the agents. */
export interface DayUseTables {
  readonly usual: readonly UsualRhythm[];
  readonly named: NamedRhythms;
  readonly times: StripTimes;
  /** How long a rhythm that was named holds at later visits. */
  readonly rhythmKept: { readonly keepForMonths: number; readonly source: SourceRef };
}
