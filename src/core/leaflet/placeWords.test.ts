import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { placeWords, placeWordsAbove } from './placeWords.ts';

const ROOM = { width: 400, letter: 7, mostLetters: 12 };
const endOf = ({ x, text }: { readonly x: number; readonly text: string }) => x + text.length * ROOM.letter;

test('a word gives way upwards to those after it, so that their lines do not cross it', () => {
  const placed = placeWordsAbove(
    [
      { x: 100, text: 'paste 07:10' },
      { x: 120, text: 'gum 07:55' },
      { x: 300, text: 'gum 19:10' },
    ],
    ROOM,
  );
  expect(placed.map(({ row }) => row)).toEqual([1, 0, 0]);
});

test('a word that would leave the room moves to the left, and a long one is cut', () => {
  expect(placeWordsAbove([{ x: 390, text: 'fluoride paste 22:25' }], ROOM)).toEqual([{ x: 316, row: 0, text: 'fluoride pa…' }]);
});

const marks = fc
  .array(
    fc.record({
      x: fc.oneof(fc.constantFrom(0, 200, 400), fc.double({ min: 0, max: 400, noNaN: true })),
      text: fc.oneof(fc.constantFrom('', 'gum', 'x'.repeat(40)), fc.string({ maxLength: 14 })),
    }),
    { maxLength: 12 },
  )
  .map((some) => some.toSorted((a, b) => a.x - b.x));
it('no two words of one row meet, and each mark has its word, above and below', () => {
  fc.assert(
    fc.property(marks, fc.constantFrom(placeWords, placeWordsAbove), (some, place) => {
      const placed = place(some, ROOM);
      expect(placed).toHaveLength(some.length);
      for (const [i, a] of placed.entries()) {
        expect(a.x).toBeGreaterThanOrEqual(0);
        expect(endOf(a)).toBeLessThanOrEqual(ROOM.width + 1e-9);
        for (const b of placed.slice(i + 1))
          if (a.row === b.row && a.text !== '' && b.text !== '') expect(endOf(a) <= b.x || endOf(b) <= a.x).toBe(true);
      }
    }),
  );
});
