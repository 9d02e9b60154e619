import type { DayUseTables } from '../regimen/dayStrip/dayUseTables.ts';
import type { RhythmId } from '../regimen/dayStrip/types.ts';
import { unknownKindOf } from '../risk/knownAnswers.ts';
import type { VisitInput } from './types.ts';

export type SaidRhythmVisit = Pick<VisitInput['visit'], 'agreed' | 'pastRhythm' | 'onDate'>;

/** What was said of how the days run. Out of date counts as not asked. */
export interface SaidRhythm {
  readonly rhythm: RhythmId;
  readonly how: 'asked' | 'carried' | 'out-of-date';
  /** ISO local date. */
  readonly askedOn: string;
}

/** How the days run: as said at this visit, else as carried from an earlier one, which goes out of date like a carried answer. Undefined = never asked. */
export function rhythmSaid({ agreed, pastRhythm, onDate }: SaidRhythmVisit, kept: DayUseTables['rhythmKept']): SaidRhythm | undefined {
  if (agreed?.rhythm !== undefined) return { rhythm: agreed.rhythm, how: 'asked', askedOn: onDate };
  if (!pastRhythm) return undefined;
  const { rhythm, askedOn } = pastRhythm;
  const isKnown = unknownKindOf({ how: 'carried', value: rhythm, askedOn }, kept, onDate) === undefined;
  return { rhythm, how: isKnown ? 'carried' : 'out-of-date', askedOn };
}
