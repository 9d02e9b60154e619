import { expect, test } from 'vitest';
import { ticksOf } from './ReadingPicture.tsx';

test('ticks are round numbers, few enough to read', () => {
  expect(ticksOf([400, 60000])).toEqual([500, 1000, 2000, 5000, 10000, 20000, 50000]);
  expect(ticksOf([20, 120000])).toEqual([100, 1000, 10000, 100000]);
});
