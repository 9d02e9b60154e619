import { describe, expect, test } from 'vitest';
import { foodsById } from '../../../content/foods.ts';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import { addEvent } from './editDay.ts';
import { findThings, OTHER_THINGS, readTyped, toEvent } from './readEntry.ts';

test.each([
  ['10:30 biscuit', 630, 'biscuit'],
  ['1030 chocolate biscuit', 630, 'chocolate biscuit'],
  ['9 pm cola', 1260, 'cola'],
  ['9:15 am', 555, ''],
  ['biscuit', undefined, 'biscuit'],
  ['25:00 tea', undefined, '25:00 tea'],
  ['', undefined, ''],
])('"%s"', (typed, startMinute, words) => {
  expect(readTyped(typed)).toEqual({ startMinute, words });
});

describe('what the words may mean', () => {
  const names = (words: string) => findThings(words).map((found) => (found.kind === 'food' ? found.food.id : found.id));

  test('nothing typed finds nothing, care is found with food', () => {
    expect(names('')).toEqual([]);
    expect(names('brush')).toContain('brushing');
    expect(names('col')[0]).toBe('cola');
    expect(names('gum')).toContain('gum');
  });

  test('everything that is found fits into an empty day', () => {
    const day = { wakeMinute: 400, sleepMinute: 1380, events: [] };
    const found = [...findThings('c'), ...OTHER_THINGS.flatMap(({ name }) => findThings(name.split(' ')[0] ?? ''))];
    expect(found.length).toBeGreaterThan(10);
    for (const thing of found) {
      const added = addEvent(day, toEvent(thing, 700, day));
      expect(added && findDayProblems(added, foodsById)).toEqual([]);
    }
  });
});
