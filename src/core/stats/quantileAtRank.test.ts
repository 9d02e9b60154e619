import { expect, test } from 'vitest';
import { quantileAtRank } from './quantileAtRank.ts';

test('a rank between two values lies between them, in any order', () => {
  expect(quantileAtRank([30, 10, 20], 1)).toBe(10);
  expect(quantileAtRank([30, 10, 20], 2.25)).toBe(22.5);
  expect(quantileAtRank([30, 10, 20], 3)).toBe(30);
});

test.each([0.9, 3.1, Number.NaN])('refuses the rank %s of three', (rank) => {
  expect(() => quantileAtRank([30, 10, 20], rank)).toThrow(/^rank must/);
});
