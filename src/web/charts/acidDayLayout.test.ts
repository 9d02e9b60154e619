import { expect, test } from 'vitest';
import { listHours, minuteOf, placeLabels, xOf } from './acidDayLayout.ts';

test('a place of the picture and its minute belong together, at every width', () => {
  for (const width of [320, 900, 1366]) {
    for (const minute of [0, 1, 719, 1440]) expect(minuteOf(xOf(minute, width), width)).toBeCloseTo(minute, 9);
  }
});

test('words that would run into each other stand in rows, and none leaves the picture', () => {
  const marks = [420, 440, 460, 900, 1435].map((minute) => ({ minute, text: 'Cola, sipped' }));
  const placed = placeLabels(marks, 900);
  expect(placed.map(({ row }) => row)).toEqual([0, 1, 2, 0, 0]);
  for (const { x, text } of placed) expect(x + text.length * 6.9).toBeLessThanOrEqual(900.001);
});

test('on a phone a long word is cut, and seen to be', () => {
  expect(placeLabels([{ minute: 0, text: 'Cola, sipped for an hour at the desk' }], 320)[0]?.text).toMatch(/^Cola, sipped.*…$/);
});

test('fewer hours where there is less room', () => {
  expect(listHours(320)).toEqual([0, 6, 12, 18, 24]);
  expect(listHours(1366)).toHaveLength(9);
});
