import { expect, test } from 'vitest';
import { acidMinutesOf } from './acidMinutesOf.ts';
import type { EatingEvent } from './types.ts';

const eaten = (id: string, startMinute: number): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'meal',
  startMinute,
  minutes: 10,
  portions: [],
});
const events = [eaten('dinner', 1200), eaten('breakfast', 420), { id: 'water', kind: 'water', startMinute: 430, minutes: 1 } as const];

test('each minute on the acid side is laid to what was begun last, the day before included', () => {
  const stretches = [
    { from: 0, to: 15 },
    { from: 425, to: 450 },
    { from: 1190, to: 1230 },
  ];
  expect(acidMinutesOf({ events }, stretches)).toEqual({ breakfast: 35, dinner: 45 });
});

test('what makes no acid has none, and a day without eating has nothing', () => {
  expect(acidMinutesOf({ events }, [])).toEqual({ breakfast: 0, dinner: 0 });
  expect(acidMinutesOf({ events: [] }, [{ from: 0, to: 10 }])).toEqual({});
});
