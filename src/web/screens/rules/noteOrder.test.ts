import { expect, test } from 'vitest';
import { NOTE_SECTIONS } from '../../../core/note/noteSections.ts';
import { listParts, movePart } from './noteOrder.ts';

test('without a setting everything but the private part is in', () => {
  expect(
    listParts()
      .filter(({ isIn }) => !isIn)
      .map(({ id }) => id),
  ).toEqual(['private']);
  expect(
    listParts(['next', 'level'])
      .map(({ id }) => id)
      .slice(0, 3),
  ).toEqual(['next', 'level', 'findings']);
  expect(
    listParts(['next'])
      .map(({ id }) => id)
      .sort(),
  ).toEqual([...NOTE_SECTIONS].sort());
});

test('a part moves one place, and stays at the ends', () => {
  expect(movePart(['level', 'next', 'goals'], 'goals', -1)).toEqual(['level', 'goals', 'next']);
  expect(movePart(['level', 'next', 'goals'], 'level', 1)).toEqual(['next', 'level', 'goals']);
  expect(movePart(['level', 'next'], 'level', -1)).toEqual(['level', 'next']);
  expect(movePart(['level', 'next'], 'next', 1)).toEqual(['level', 'next']);
  expect(movePart(['level'], 'next', 1)).toEqual(['level']);
});
