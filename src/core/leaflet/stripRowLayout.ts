import { type PlacedWord, placeWords, placeWordsAbove } from './placeWords.ts';
import type { StripRow, StripSpan } from './types.ts';

const DAY_MINUTES = 1440;

/** How large the parts of a day are drawn, in one unit. */
export interface StripSizes {
  readonly band: number;
  readonly mark: number;
  readonly gap: number;
  /** Height of a row of words. */
  readonly word: number;
  /** About the width of a letter. */
  readonly letter: number;
  /** Longer words are cut. */
  readonly mostLetters: number;
}

/** On paper, mm: the letters are those of the small type of a leaflet, 12 pt. */
export const STRIP_ROW_MM: StripSizes = { band: 6, mark: 1.6, gap: 1, word: 4.4, letter: 2.15, mostLetters: 22 };

export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A word with its base line. */
export type StripWord = PlacedWord & { readonly yMm: number };

/** A use: from its word down into the band. */
export interface StripStem {
  readonly xMm: number;
  readonly fromMm: number;
  readonly toMm: number;
}

/** One day drawn to a width: what is used above the band; on it sleep, waits and what is dark; below, when something is eaten, with words. */
export interface StripRowLayout {
  readonly band: Box;
  readonly acid: readonly Box[];
  readonly night: readonly Box[];
  readonly waits: readonly Box[];
  readonly away: readonly Box[];
  readonly marks: readonly Box[];
  readonly ticks: readonly Box[];
  readonly stems: readonly StripStem[];
  readonly useWords: readonly StripWord[];
  readonly words: readonly StripWord[];
  readonly heightMm: number;
}

/** The same day for a page that is written from right to left: morning stands on the right. */
export function rowInDirection(row: StripRow, direction: 'ltr' | 'rtl'): StripRow {
  if (direction === 'ltr') return row;
  const turn = <T extends StripSpan>(span: T): T => ({ ...span, from: DAY_MINUTES - span.to, to: DAY_MINUTES - span.from });
  const turnMark = <T extends { readonly minute: number }>(mark: T): T => ({ ...mark, minute: DAY_MINUTES - mark.minute });
  return {
    ...row,
    night: row.night.map(turn),
    acid: row.acid.map(turn),
    eaten: row.eaten.map(turn).reverse(),
    uses: row.uses?.map(turnMark).reverse(),
    waits: row.waits?.map(turn),
    away: row.away?.map(turn),
    ticks: row.ticks?.map(turnMark),
  };
}

/** @param sizes  in the unit of the width */
export function layOutStripRow(row: StripRow, widthMm: number, sizes: StripSizes = STRIP_ROW_MM): StripRowLayout {
  const { band, mark, gap, word } = sizes;
  const { uses = [], waits = [], away = [], ticks = [] } = row;
  const xOf = (minute: number) => (minute / DAY_MINUTES) * widthMm;
  const boxOf = ({ from, to }: StripSpan, yMm: number, heightMm: number, least = band / 15): Box => ({
    xMm: xOf(from),
    yMm,
    widthMm: Math.max(least, xOf(to) - xOf(from)),
    heightMm,
  });
  const room = { ...sizes, width: widthMm };
  const useWords = placeWordsAbove(
    uses.map(({ minute, name }) => ({ x: xOf(minute), text: name })),
    room,
  );
  const wordsBelow = placeWords(listWordsBelow(row, xOf), room);
  const bandAt = uses.length === 0 ? 0 : rowsOf(useWords) * word + gap;
  // With uses, waits lie over what is dark: one sees what a use follows.
  const hasTwoLanes = uses.length > 0 && row.acid.length > 0;
  const lane = hasTwoLanes ? band / 2 : band;
  const marksAt = bandAt + band + gap;
  const wordsAt = marksAt + mark + gap;
  const yAbove = (place: PlacedWord) => bandAt - gap - place.row * word - gap / 2;
  return {
    band: { xMm: 0, yMm: bandAt, widthMm, heightMm: band },
    acid: row.acid.map((span) => boxOf(span, bandAt + (hasTwoLanes ? lane : 0), lane)),
    night: row.night.map((span) => boxOf(span, bandAt + lane / 2, 0)),
    waits: waits.map((span) => boxOf(span, bandAt, lane)),
    away: away.map((span) => boxOf(span, marksAt + mark / 2, 0)),
    marks: row.eaten.map((span) => boxOf(span, marksAt, mark, mark)),
    ticks: ticks.map(({ minute }) => ({ xMm: xOf(minute), yMm: bandAt + band, widthMm: 0, heightMm: gap + mark })),
    stems: uses.map(({ minute }, i) => ({
      xMm: xOf(minute),
      fromMm: yAbove(useWords[i] ?? { x: 0, row: 0, text: '' }),
      toMm: bandAt + lane,
    })),
    useWords: useWords.map((one) => ({ ...one, yMm: yAbove(one) })),
    words: wordsBelow.map((one) => ({ ...one, yMm: wordsAt + (one.row + 1) * word - gap })),
    heightMm: wordsAt + rowsOf(wordsBelow) * word,
  };
}

function listWordsBelow({ eaten, away = [], ticks = [] }: StripRow, xOf: (minute: number) => number) {
  return [...eaten.map(({ from, name }) => ({ from, name })), ...away, ...ticks.map(({ minute, name }) => ({ from: minute, name }))]
    .filter(({ name }) => name !== '')
    .sort((a, b) => a.from - b.from)
    .map(({ from, name }) => ({ x: xOf(from), text: name }));
}

const rowsOf = (words: readonly PlacedWord[]): number => Math.max(0, ...words.map(({ row }) => row + 1));
