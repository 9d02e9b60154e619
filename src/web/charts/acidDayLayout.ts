import { type PlacedWord, placeWords } from '../../core/leaflet/placeWords.ts';
import { DAY_MINUTES } from '../../core/plaque/day/nightSpans.ts';

/** Room on both sides of the day, px: the figures of the pH scale, and the last hour. */
export const LEFT = 40;
export const RIGHT = 24;
export const ROW = 20;
/** Letters of the small type are about this wide, px. */
const LETTER = 6.9;

/** Place of a minute of the day in a picture of this width. */
export const xOf = (minute: number, width: number): number => LEFT + (minute / DAY_MINUTES) * (width - LEFT - RIGHT);

export const minuteOf = (x: number, width: number): number => ((x - LEFT) / (width - LEFT - RIGHT)) * DAY_MINUTES;

/** Each word under its mark, in as many rows as are needed. */
export function placeLabels(marks: readonly { readonly minute: number; readonly text: string }[], width: number): readonly PlacedWord[] {
  const mostLetters = Math.max(6, Math.floor((width - LEFT) / LETTER / 2.4));
  const at = marks.map(({ minute, text }) => ({ x: xOf(minute, width), text }));
  return placeWords(at, { width, letter: LETTER, mostLetters });
}

/** Hours at which the scale has a figure: as many as the width holds. */
export const listHours = (width: number): readonly number[] => {
  const step = width < 420 ? 6 : width < 700 ? 4 : 3;
  return Array.from({ length: 24 / step + 1 }, (_, i) => i * step);
};
