import { expect, test } from 'vitest';
import type { DayBand } from '../../../core/plaque/day/dayBand.ts';
import { sayChanged, sayMoves, sayTogether, sayTold } from './sayStudy.ts';
import type { DayStudy } from './studyDay.ts';

const AWAY = { minutes: { low: 0, high: 20 }, awakeMinutes: { low: 0, high: 0 }, addedByFood: { low: 50, high: 80 } };
const band = (low: number, high: number, atRest: DayBand['atRest'] = AWAY) =>
  ({ minutesBelow: { saliva: { low, high } }, atRest }) as unknown as DayBand;
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

test('where plaque lies near the line by itself, both days are told by what eating adds, as in the headline', () => {
  const near = (addedByFood: { readonly low: number; readonly high: number }, awake = 0) =>
    band(120, 700, { minutes: { low: 0, high: 300 }, awakeMinutes: { low: 0, high: awake }, addedByFood });
  const fewer = { low: 44, high: 81 };
  expect(sayChanged(study({ bandTold: near({ low: 120, high: 300 }), bandChanged: near({ low: 60, high: 90 }), fewer }))).toBe(
    'In the model, this plaque lies near the line at night even when nothing is eaten. What is eaten and drunk adds roughly 2 to 5 hours a day on the acid side as told, roughly 60 to 90 minutes with the change: 40 to 80 minutes less.',
  );
  expect(sayChanged(study({ bandTold: near({ low: 120, high: 600 }, 90), bandChanged: band(58, 92) }))).toMatch(
    /^In the model, .* day and night .* adds at least 2 hours a day .* as told, roughly 50 to 80 minutes with the change\. The model cannot tell a difference\. How much more it adds, the model cannot tell\.$/,
  );
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
