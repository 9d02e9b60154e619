import { expect, test } from 'vitest';
import { mouthPresets } from '../../../content/plaque/presets.ts';
import type { AcidDay, EatingEvent } from '../../../core/plaque/day/types.ts';
import { type DayStudy, type StudyQuestion, studyDay } from './studyDay.ts';

const eaten = (id: string, startMinute: number, food: string, occasion: EatingEvent['occasion']): EatingEvent => ({
  id,
  kind: 'eating',
  occasion,
  startMinute,
  minutes: 10,
  portions: [{ food, amount: 150 }],
});
const told: AcidDay = {
  wakeMinute: 420,
  sleepMinute: 1380,
  events: [
    eaten('lunch', 750, 'apple', 'meal'),
    eaten('cola', 600, 'cola', 'between-meals'),
    eaten('ale', 960, 'ginger-ale', 'between-meals'),
  ],
};
const free = { food: { allowed: 'any' }, gum: { allowed: false } } as unknown as NonNullable<StudyQuestion['limits']>;
const study = (limits: StudyQuestion['limits']): Partial<DayStudy> =>
  Object.assign({}, ...studyDay({ told, changed: null, mouth: mouthPresets.average, measured: {}, limits }));

test('two and three changes together come after the single ones, the pair of two events gains more than the best of them', () => {
  const { gains = [], together = [] } = study(free);
  expect(gains.length).toBeGreaterThan(2);
  expect(together.map(({ gain }) => gain.moves.length)).toEqual([2]);
  const [pair] = together;
  expect(new Set(pair?.gain.moves.map(({ eventId }) => eventId))).toEqual(new Set(['cola', 'ale']));
  expect(pair?.found).toBe('every-pair');
  expect(pair?.gain.fewerMinutes?.low ?? 0).toBeGreaterThan(gains[0]?.fewerMinutes?.low ?? 0);
});
