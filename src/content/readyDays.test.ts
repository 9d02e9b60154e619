import { expect, test } from 'vitest';
import { findDayProblems } from '../core/plaque/day/findDayProblems.ts';
import { foodsById } from './foods.ts';
import { type ReadyEventId, readyEventNames } from './readyDayNames.ts';
import { readyDays } from './readyDays.ts';

test('there are six, each with a name of its own', () => {
  expect(readyDays).toHaveLength(6);
  expect(new Set(readyDays.map(({ id }) => id)).size).toBe(6);
  for (const language of ['en', 'es'] as const) expect(new Set(readyDays.map(({ name }) => name[language])).size).toBe(6);
});

test.each(readyDays.map(({ id, day }) => [id, day] as const))('%s can be worked out as it stands', (_id, day) => {
  expect(findDayProblems(day, foodsById)).toEqual([]);
  expect(day.events.filter(({ kind }) => kind === 'eating').length).toBeGreaterThanOrEqual(3);
});

test('every event of eating has its name in each language, and none stands in the table for nothing', () => {
  const eaten = readyDays.flatMap(({ day }) => day.events.filter(({ kind }) => kind === 'eating'));
  for (const { id, label } of eaten) expect(readyEventNames[id as ReadyEventId]?.en).toBe(label);
  expect(new Set(eaten.map(({ id }) => id))).toEqual(new Set(Object.keys(readyEventNames)));
});
