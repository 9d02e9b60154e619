import { type PlacedWord, placeWords } from './placeWords.ts';
import type { StripRow } from './types.ts';

const DAY_MINUTES = 1440;
export const STRIP_ROW_MM = { band: 6, mark: 1.6, gap: 1, word: 4.4 } as const;
/** Of the small type of a leaflet, 12 pt. */
const LETTER_MM = 2.15;
const MOST_LETTERS = 22;

export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** One day of a leaflet drawn to a width: the band, what is dark on it, when something is eaten, and its words below. */
export interface StripRowLayout {
  readonly band: Box;
  readonly acid: readonly Box[];
  readonly night: readonly Box[];
  readonly marks: readonly Box[];
  /** The base line of each word. */
  readonly words: readonly (PlacedWord & { readonly yMm: number })[];
  readonly heightMm: number;
}

/** The same day for a page that is written from right to left: morning stands on the right. */
export function rowInDirection(row: StripRow, direction: 'ltr' | 'rtl'): StripRow {
  if (direction === 'ltr') return row;
  const turn = <T extends { readonly from: number; readonly to: number }>(span: T): T => ({
    ...span,
    from: DAY_MINUTES - span.to,
    to: DAY_MINUTES - span.from,
  });
  return { ...row, night: row.night.map(turn), acid: row.acid.map(turn), eaten: row.eaten.map(turn).reverse() };
}

export function layOutStripRow(row: StripRow, widthMm: number): StripRowLayout {
  const { band, mark, gap, word } = STRIP_ROW_MM;
  const xOf = (minute: number) => (minute / DAY_MINUTES) * widthMm;
  const box = ({ from, to }: { readonly from: number; readonly to: number }, yMm: number, heightMm: number, least = 0.4): Box => ({
    xMm: xOf(from),
    yMm,
    widthMm: Math.max(least, xOf(to) - xOf(from)),
    heightMm,
  });
  const placed = placeWords(
    row.eaten.map(({ from, name }) => ({ x: xOf(from), text: name })),
    { width: widthMm, letter: LETTER_MM, mostLetters: MOST_LETTERS },
  );
  const wordsAt = band + gap + mark + gap;
  const rows = Math.max(0, ...placed.map((one) => one.row + 1));
  return {
    band: { xMm: 0, yMm: 0, widthMm, heightMm: band },
    acid: row.acid.map((span) => box(span, 0, band)),
    night: row.night.map((span) => box(span, band / 2, 0)),
    marks: row.eaten.map((span) => box(span, band + gap, mark, mark)),
    words: placed.map((one) => ({ ...one, yMm: wordsAt + (one.row + 1) * word - 1 })),
    heightMm: wordsAt + rows * word,
  };
}
