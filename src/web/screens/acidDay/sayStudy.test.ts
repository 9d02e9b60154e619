import { expect, test } from 'vitest';
import type { DayBand } from '../../../core/plaque/day/dayBand.ts';
import { sayChanged, sayMoves, sayTogether, sayTold } from './sayStudy.ts';
import type { DayStudy } from './studyDay.ts';

const band = (low: number, high: number) => ({ minutesBelow: { saliva: { low, high } } }) as unknown as DayBand;
const study = (part: Partial<DayStudy>): Partial<DayStudy> => ({
  bandTold: band(118, 184),
  bandChanged: band(58, 92),
  fewer: null,
  more: null,
  ...part,
});

test('nothing is said before there is a range', () => {
  const day = { wakeMinute: 400, sleepMinute: 1380, events: [] };
  expect(sayTold({ day, drawn: { minutes: { saliva: 150 } } as never, study: {} })).toBeNull();
  expect(sayChanged({ bandTold: band(1, 2) })).toBeNull();
});

test('a difference in minutes only where the band leaves out zero', () => {
  expect(sayChanged(study({ fewer: { low: 44, high: 81 } }))).toMatch(
    /roughly 2 to 3 hours a day.* as told, 60 to 90 minutes with the change: 40 to 80 minutes less\.$/,
  );
  expect(sayChanged(study({ more: { low: 44, high: 81 } }))).toMatch(/40 to 80 minutes more\.$/);
  expect(sayChanged(study({}))).toMatch(/with the change\. The model cannot tell a difference\.$/);
});

const eaten = (id: string, food: string) =>
  ({ id, kind: 'eating', occasion: 'between-meals', startMinute: 600, minutes: 10, portions: [{ food, amount: 100 }] }) as const;

test('changes together are one sentence, with minutes or with how they were found', () => {
  const day = { wakeMinute: 400, sleepMinute: 1380, events: [eaten('a', 'apple'), eaten('b', 'cola')] };
  const moves = [
    { kind: 'drop', eventId: 'a' },
    { kind: 'water', eventId: 'b' },
  ] as const;
  expect(sayMoves(moves, day)).toBe('Leaving out apple and water instead of cola');
  const gain = { moves, rank: 1, isAsked: true };
  expect(sayTogether({ found: 'every-pair', gain: { ...gain, fewerMinutes: { low: 44, high: 81 } } })).toBe(
    'in the model, 40 to 80 minutes less a day; the best of all pairs',
  );
  expect(sayTogether({ found: 'widened', gain })).not.toMatch(/\d/);
});
