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

/** A line through one value for each minute. Nothing is drawn that two neighbours on a straight line do not need. */
export function linePath(values: ArrayLike<number>, x: (minute: number) => number, y: (value: number) => number): string {
  const parts: string[] = [];
  for (let minute = 0; minute < values.length; minute += 1) {
    const [before, here, after] = [values[minute - 1], values[minute], values[minute + 1]];
    if (here === undefined) continue;
    const isStraight = before !== undefined && after !== undefined && Math.abs(before + after - 2 * here) < 1e-4;
    if (!isStraight) parts.push(`${x(minute).toFixed(1)},${y(here).toFixed(1)}`);
  }
  return `M${parts.join('L')}`;
}

/** The area between two lines. */
export function bandPath(
  low: ArrayLike<number>,
  high: ArrayLike<number>,
  x: (minute: number) => number,
  y: (value: number) => number,
): string {
  const back = Array.from({ length: low.length }, (_, i) => low.length - 1 - i).map(
    (minute) => `${x(minute).toFixed(1)},${y(low[minute] ?? 0).toFixed(1)}`,
  );
  return `${linePath(high, x, y)}L${back.join('L')}Z`;
}

/** Hours at which the scale has a figure: as many as the width holds. */
export const listHours = (width: number): readonly number[] => {
  const step = width < 420 ? 6 : width < 700 ? 4 : 3;
  return Array.from({ length: 24 / step + 1 }, (_, i) => i * step);
};
