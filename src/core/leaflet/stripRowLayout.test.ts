import { expect, test } from 'vitest';
import { layOutStripRow } from './stripRowLayout.ts';
import type { StripRow } from './types.ts';

const row: StripRow = {
  night: [{ from: 0, to: 400 }],
  acid: [{ from: 900, to: 1020 }],
  eaten: [
    { from: 0, to: 10, name: 'Milk' },
    { from: 5, to: 15, name: 'Toast' },
    { from: 1430, to: 1440, name: 'A sweet in bed' },
  ],
};

test('what is dark, when it is eaten and the words, all within the width', () => {
  const { acid, marks, words, heightMm, night } = layOutStripRow(row, 144);
  expect(acid).toEqual([{ xMm: 90, yMm: 0, widthMm: 12, heightMm: 6 }]);
  expect(night[0]).toMatchObject({ xMm: 0, widthMm: 40 });
  expect(marks).toHaveLength(3);
  expect(words.map((word) => word.row)).toEqual([0, 1, 0]);
  for (const { x, text } of words) expect(x + text.length * 2.15).toBeLessThanOrEqual(144.01);
  expect(heightMm).toBeCloseTo(6 + 1 + 1.6 + 1 + 2 * 4.4);
});

test('a day on which nothing was eaten is a band alone', () => {
  expect(layOutStripRow({ ...row, acid: [], eaten: [] }, 144)).toMatchObject({ acid: [], marks: [], words: [] });
});
