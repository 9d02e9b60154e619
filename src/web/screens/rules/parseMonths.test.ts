import { expect, test } from 'vitest';
import { parseMonths } from './Settings.tsx';

const months = { low: ['24', '24'], moderate: ['12', '18'], high: ['6', ' 12'], extreme: ['6', '6'] } as const;

test('whole months, shorter first', () => {
  expect(parseMonths(months)).toEqual({ low: [24, 24], moderate: [12, 18], high: [6, 12], extreme: [6, 6] });
});

test.each([
  ['', '24'],
  ['24', '12'],
  ['6.5', '7'],
  ['0', '6'],
  ['-3', '6'],
] as const)('%s to %s is refused', (from, to) => {
  expect(parseMonths({ ...months, low: [from, to] })).toBeUndefined();
});
