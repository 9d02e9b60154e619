import { expect, test } from 'vitest';
import { listDifferences } from './differences.ts';

test('only what differs, with both values; a line that is missing is said', () => {
  const theirs = [
    ['Price', '3.10'],
    ['In stock', 'yes'],
    ['pH', '7'],
  ] as const;
  const mine = [
    ['Price', '3.20'],
    ['In stock', 'yes'],
    ['Course', '7 days'],
  ] as const;
  expect(listDifferences(theirs, mine)).toEqual([
    { name: 'Price', theirs: '3.10', mine: '3.20' },
    { name: 'pH', theirs: '7', mine: 'not there' },
    { name: 'Course', theirs: 'not there', mine: '7 days' },
  ]);
});
