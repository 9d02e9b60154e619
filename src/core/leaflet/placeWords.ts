export interface PlacedWord {
  readonly x: number;
  /** 0 = beside its mark; each further one a row away from it. */
  readonly row: number;
  readonly text: string;
}

interface Room {
  readonly width: number;
  /** About the width of a letter. */
  readonly letter: number;
  /** Longer words are cut, and seen to be. */
  readonly mostLetters: number;
}

interface Mark {
  readonly x: number;
  readonly text: string;
}

/** Puts each word under its mark, a row lower where it would run into one before it; a word that would leave the room moves to the left. */
export function placeWords(marks: readonly Mark[], room: Room): readonly PlacedWord[] {
  const ends: number[] = [];
  return marks.map((mark) => {
    const { x, end, text } = boxOf(mark, room);
    const free = ends.findIndex((taken) => taken + room.letter < x);
    const row = free === -1 ? ends.length : free;
    ends[row] = end;
    return { x, row, text };
  });
}

/**
 * Puts each word above its mark, from which a line leads up to it: a word gives way upwards to those after it, so that no line of theirs
 * crosses it.
 * @param marks  from left to right
 */
export function placeWordsAbove(marks: readonly Mark[], room: Room): readonly PlacedWord[] {
  const placed: { readonly at: number; readonly box: Box; readonly row: number }[] = [];
  for (const mark of marks.toReversed()) {
    const box = boxOf(mark, room);
    const inTheWay = placed.filter((other) => meets(box, other.box, 1.5 * room.letter) || (other.at >= box.x && other.at <= box.end));
    placed.push({ at: mark.x, box, row: Math.max(-1, ...inTheWay.map(({ row }) => row)) + 1 });
  }
  return placed.toReversed().map(({ box: { x, text }, row }) => ({ x, row, text }));
}

interface Box {
  readonly x: number;
  readonly end: number;
  readonly text: string;
}

function boxOf({ x: wanted, text: whole }: Mark, { width, letter, mostLetters }: Room): Box {
  const text = whole.length > mostLetters ? `${whole.slice(0, mostLetters - 1).trimEnd()}…` : whole;
  const long = text.length * letter;
  const x = Math.max(0, Math.min(wanted, width - long));
  return { x, end: x + long, text };
}

const meets = (a: Box, b: Box, gap: number): boolean => a.x < b.end + gap && b.x < a.end + gap;
