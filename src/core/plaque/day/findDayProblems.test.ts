import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { findDayProblems, requireDay } from './findDayProblems.ts';
import { nightSpans } from './nightSpans.ts';
import type { AcidDay, DayEvent, Food } from './types.ts';

const apple: Food = {
  id: 'apple',
  name: { en: 'Apple', es: 'Manzana' },
  unit: 'g',
  sugarsGPer100: 10,
  starchGPer100: 0,
  waterGPer100: 85,
  retention: 'clears',
  usualAmount: 150,
  usualMinutes: 8,
  source: { key: 'test', status: 'proposal' },
};
const foods = new Map([[apple.id, apple]]);
const eating = (changes: Partial<Extract<DayEvent, { kind: 'eating' }>> = {}): DayEvent => ({
  id: 'a',
  kind: 'eating',
  occasion: 'meal',
  startMinute: 720,
  minutes: 20,
  portions: [{ food: 'apple', amount: 150 }],
  ...changes,
});
const dayOf = (...events: readonly DayEvent[]): AcidDay => ({ wakeMinute: 420, sleepMinute: 1380, events });
const pathsOf = (day: AcidDay) => findDayProblems(day, foods).map(({ path }) => path);
const typed = (changes: object) =>
  eating({ portions: [{ typed: { name: 'Bar', unit: 'g', sugarsGPer100: 40, retention: 'sticks', ...changes }, amount: 30 }] });

describe('findDayProblems', () => {
  it('finds nothing in a usual day', () => {
    const day = dayOf(
      eating(),
      { id: 'b', kind: 'gum', startMinute: 740, minutes: 10 },
      { id: 'c', kind: 'brushing', startMinute: 1370, minutes: 2, fluoridePpm: 1450 },
      { id: 'd', kind: 'rinse', rinse: 'alkaline', startMinute: 1372, minutes: 1, bicarbonateMmolPerL: 84 },
      eating({ id: 'e', sipped: true, startMinute: 600, minutes: 300 }),
    );
    expect(findDayProblems(day, foods)).toEqual([]);
    expect(requireDay(day, foods)).toBe(day);
  });

  test.each([
    ['wakeMinute', { ...dayOf(), wakeMinute: -1 }],
    ['wakeMinute', { ...dayOf(), wakeMinute: Number.NaN }],
    ['sleepMinute', { ...dayOf(), sleepMinute: 1440 }],
    ['sleepMinute', { ...dayOf(), sleepMinute: 420 }],
    ['label', { ...dayOf(), label: 'x'.repeat(81) }],
    ['events.0.startMinute', dayOf(eating({ startMinute: -5 }))],
    ['events.0.minutes', dayOf(eating({ minutes: 0 }))],
    ['events.0.minutes', dayOf(eating({ minutes: 25 * 60 }))],
    ['events.0.minutes', dayOf(eating({ startMinute: 1430, minutes: 11 }))],
    ['events.0.minutes', dayOf({ id: 'b', kind: 'brushing', startMinute: 800, minutes: 31 })],
    ['events.0.portions', dayOf(eating({ portions: [] }))],
    ['events.0.portions.0.food', dayOf(eating({ portions: [{ food: 'unknown', amount: 10 }] }))],
    ['events.0.portions.0.amount', dayOf(eating({ portions: [{ food: 'apple', amount: -10 }] }))],
    ['events.0.portions.0.amount', dayOf(eating({ portions: [{ food: 'apple', amount: 1e6 }] }))],
    ['events.0.portions.0.typed.sugarsGPer100', dayOf(typed({ sugarsGPer100: 101 }))],
    ['events.0.portions.0.typed.pH', dayOf(typed({ pH: 1.9 }))],
    ['events.0.portions.0.typed.name', dayOf(typed({ name: ' ' }))],
    ['events.0.bicarbonateMmolPerL', dayOf({ id: 'b', kind: 'rinse', rinse: 'alkaline', startMinute: 800, minutes: 1 })],
    ['events.0.ureaPercent', dayOf({ id: 'b', kind: 'rinse', rinse: 'urea', startMinute: 800, minutes: 1, ureaPercent: 200 })],
    ['events.0.fluoridePpm', dayOf({ id: 'b', kind: 'rinse', rinse: 'fluoride', startMinute: 800, minutes: 1, fluoridePpm: -1 })],
    ['events.1.id', dayOf(eating(), eating({ startMinute: 900 }))],
    ['events.0.id', dayOf(eating({ id: '' }))],
    ['events.0.startMinute', dayOf({ id: 'g', kind: 'gum', startMinute: 1375, minutes: 10 })],
    ['events.0.startMinute', dayOf({ id: 'g', kind: 'gum', startMinute: 410, minutes: 11 })],
    ['events.1.startMinute', dayOf(eating(), eating({ id: 'b', startMinute: 739 }))],
    ['events.0.startMinute', dayOf(eating({ startMinute: 739 }), eating({ id: 'b' }))],
    ['events.1.startMinute', dayOf(eating(), eating({ id: 'b' }))],
  ])('names %s', (path, day) => {
    expect(pathsOf(day)).toEqual([path]);
    expect(() => requireDay(day, foods)).toThrow(path);
  });

  it('lets events touch, food be taken at night, and others go on beside what is sipped', () => {
    expect(pathsOf(dayOf(eating(), eating({ id: 'b', startMinute: 740 })))).toEqual([]);
    expect(pathsOf(dayOf(eating({ startMinute: 120 })))).toEqual([]);
    expect(pathsOf(dayOf(eating({ sipped: true }), eating({ id: 'b', startMinute: 730 })))).toEqual([]);
  });

  it('says the allowed range', () => {
    expect(findDayProblems(dayOf(eating({ minutes: 1500 })), foods)[0]?.message).toBe('must be 0.1 to 720: 1500');
    expect(findDayProblems(dayOf(eating(), eating({ id: 'b', startMinute: 739 })), foods)[0]?.message).toBe(
      'must be 740 or later, after the event a ends: 739',
    );
  });

  it('names a field of the day for any numbers, and never throws anything else', () => {
    const number = fc.oneof(fc.constantFrom(-1, 0, 0.1, 720, 1439, 1440, Number.NaN, Infinity), fc.double());
    fc.assert(
      fc.property(number, number, number, (startMinute, minutes, amount) => {
        const day = dayOf(eating({ startMinute, minutes, portions: [{ food: 'apple', amount }] }));
        for (const { path } of findDayProblems(day, foods)) expect(path).toMatch(/^events\.0\.(startMinute|minutes|portions\.0\.amount)$/);
        const isFine =
          startMinute >= 0 && minutes >= 0.1 && minutes <= 720 && startMinute + minutes <= 1440 && amount >= 0.1 && amount <= 3000;
        expect(findDayProblems(day, foods).length === 0).toBe(isFine && startMinute <= 1439);
      }),
    );
  });
});

test.each([
  [
    420,
    1380,
    [
      { from: 0, to: 420 },
      { from: 1380, to: 1440 },
    ],
  ],
  [420, 30, [{ from: 30, to: 420 }]],
  [0, 1380, [{ from: 1380, to: 1440 }]],
  [960, 540, [{ from: 540, to: 960 }]],
])('who wakes at %i and goes to sleep at %i sleeps %j', (wakeMinute, sleepMinute, spans) => {
  expect(nightSpans({ wakeMinute, sleepMinute })).toEqual(spans);
});
