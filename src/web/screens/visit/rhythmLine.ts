import { RHYTHM_IDS, type RhythmId } from '../../../core/regimen/dayStrip/types.ts';
import type { SourceRef } from '../../../core/visit/answer.ts';
import type { SaidRhythm } from '../../../core/visit/rhythmSaid.ts';
import type { PastRhythm } from '../../../core/visit/types.ts';
import { formatMonth } from '../../format.ts';
import type { Line } from './line.ts';
import { unknownWords } from './questionLines.ts';
import { RHYTHM_NAMES } from './sayUses.ts';

export const RHYTHM = 'rhythm of the day';
export const RHYTHM_LETTER = 'h';

interface RhythmLinePlace {
  readonly said: SaidRhythm | undefined;
  readonly past: PastRhythm | undefined;
  /** Of the keep-for time. */
  readonly source: SourceRef;
}

/** How the days run: asked today, or carried with its month until it is out of date; "=" says that it has not changed. */
export const rhythmLine = ({ said, past, source }: RhythmLinePlace): Line => ({
  id: RHYTHM,
  letter: RHYTHM_LETTER,
  label: 'How the days run',
  prompt: 'How do most days run?',
  entry: { kind: 'choice', choices: RHYTHM_IDS.map((id) => ({ id, label: RHYTHM_NAMES[id] })) },
  mayBeUnknown: false,
  wanted: false,
  reconfirmable: said !== undefined && said.how !== 'asked',
  private: false,
  value: said?.rhythm,
  sources: [source],
  ...sayState(said, past),
});

function sayState(said: SaidRhythm | undefined, past: PastRhythm | undefined): Pick<Line, 'text' | 'tone' | 'note'> {
  if (said === undefined) return { text: unknownWords('not-asked'), tone: 'unknown' };
  const text = RHYTHM_NAMES[said.rhythm];
  const before = past && `was ${RHYTHM_NAMES[past.rhythm]}, ${formatMonth(past.askedOn)}`;
  if (said.how === 'out-of-date') return { text: unknownWords('out-of-date'), tone: 'unknown', note: before };
  if (said.how === 'carried') return { text, tone: 'carried', note: `asked ${formatMonth(said.askedOn)}` };
  if (past?.rhythm === said.rhythm) return { text, tone: 'confirmed', note: 'asked today, no change' };
  return { text, tone: 'new', note: before };
}

/** What was keyed for it, as it is kept; undefined = no rhythm that is known. */
export const rhythmOfReply = (value: string): RhythmId | undefined => RHYTHM_IDS.find((id) => id === value);
