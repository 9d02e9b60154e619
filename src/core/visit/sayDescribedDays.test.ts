import { expect, test } from 'vitest';
import type { AcidDay, EatingEvent } from '../plaque/day/types.ts';
import { sayDescribedDays, sayMinute } from './sayDescribedDays.ts';

const eating = (id: string, occasion: EatingEvent['occasion']): EatingEvent => ({
  id,
  kind: 'eating',
  occasion,
  startMinute: 600,
  minutes: 10,
  portions: [{ food: 'cola', amount: 330 }],
});
const day: AcidDay = {
  wakeMinute: 400,
  sleepMinute: 1380,
  events: [eating('a', 'meal'), eating('b', 'between-meals'), { id: 'c', kind: 'gum', startMinute: 700, minutes: 10 }],
};

test('a minute of the day as a time', () => {
  expect([0, 400, 1439.5].map(sayMinute)).toEqual(['00:00', '06:40', '23:59']);
});

test('one day, what of it is between meals, and that a change was tried', () => {
  expect(sayDescribedDays({ days: [day], changed: { of: 0, day } })).toBe(
    'eating or drinking 2 times, 1 of them between meals; awake from 06:40 to 23:00; a change was tried',
  );
});

test('each day of a diary by its name', () => {
  expect(
    sayDescribedDays({
      days: [
        { ...day, label: 'Sunday', events: [] },
        { ...day, events: [eating('a', 'meal')] },
      ],
    }),
  ).toBe(
    'Sunday: eating or drinking 0 times; awake from 06:40 to 23:00; day 2: eating or drinking once, none of them between meals; awake from 06:40 to 23:00',
  );
});
