import { expect, test } from 'vitest';
import { questions } from './questions.ts';
import { sheetWords } from './sheetWords.ts';

const asked = questions.filter(({ group }) => group !== 'look');

test('every open question is worded for the sheet or left to the room, and no private one is', () => {
  expect(Object.keys(sheetWords).sort()).toEqual(
    asked
      .filter((q) => q.private !== true)
      .map(({ id }) => id)
      .sort(),
  );
});

test.each(Object.entries(sheetWords).filter(([, words]) => words !== 'in-the-room'))('%s is a short question', (_id, words) => {
  expect(words).toContain('?');
  for (const sentence of words.split(/[.?]/)) expect(sentence.trim().split(/\s+/).length).toBeLessThanOrEqual(17);
});
