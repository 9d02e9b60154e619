import { expect, test } from 'vitest';
import { workingDaysBetween } from './workingDaysBetween.ts';

test.each([
  { every: { kind: 'daily' } as const, week: 4, days: 1 },
  { every: { kind: 'weekly-and-new-lot' } as const, week: 4, days: 4 },
  { every: { kind: 'own', days: 14 } as const, week: 5, days: 10 },
  { every: { kind: 'own', days: 1 } as const, week: 5, days: 1 },
  { every: { kind: 'weekly-and-new-lot' } as const, week: 0.5, days: 1 },
])('$every.kind in a week of $week days', ({ every, week, days }) => expect(workingDaysBetween(every, week)).toBe(days));

test('names what is wrong', () => {
  expect(() => workingDaysBetween({ kind: 'daily' }, 0)).toThrow(/^workingDaysAWeek must/);
  expect(() => workingDaysBetween({ kind: 'own', days: 0 }, 5)).toThrow(/^every.days must/);
});
