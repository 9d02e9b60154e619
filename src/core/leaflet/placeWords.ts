export interface PlacedWord {
  readonly x: number;
  /** 0 = directly under its mark; each further one a row lower. */
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

/** Puts each word under its mark, a row lower where it would run into one before it; a word that would leave the room moves to the left. */
export function placeWords(
  marks: readonly { readonly x: number; readonly text: string }[],
  { width, letter, mostLetters }: Room,
): readonly PlacedWord[] {
  const ends: number[] = [];
  return marks.map(({ x: wanted, text: whole }) => {
    const text = whole.length > mostLetters ? `${whole.slice(0, mostLetters - 1).trimEnd()}…` : whole;
    const long = text.length * letter;
    const x = Math.max(0, Math.min(wanted, width - long));
    const free = ends.findIndex((end) => end + letter < x);
    const row = free === -1 ? ends.length : free;
    ends[row] = x + long;
    return { x, row, text };
  });
}
