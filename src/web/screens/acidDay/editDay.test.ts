import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findDayProblems } from '../../../core/plaque/day/findDayProblems.ts';
import type { AcidDay, DayEvent } from '../../../core/plaque/day/types.ts';
import { addEvent, findEvent, findFreeStart, freshId, lengthenEvent, moveEvent, removeEvent, stepEvent } from './editDay.ts';

const portions = [{ typed: { name: 'bread', unit: 'g', sugarsGPer100: 5, retention: 'lingers' }, amount: 50 }] as const;
const meal = (id: string, startMinute: number, minutes: number, more = {}): DayEvent => ({
  id,
  kind: 'eating',
  occasion: 'meal',
  startMinute,
  minutes,
  portions,
  ...more,
});
const day: AcidDay = {
  wakeMinute: 400,
  sleepMinute: 1380,
  events: [meal('e1', 480, 20), { id: 'e2', kind: 'gum', startMinute: 505, minutes: 15 }, meal('e3', 900, 60, { sipped: true })],
};
const startOf = (changed: AcidDay, id: string) => findEvent(changed, id)?.startMinute;

describe('where a moved event comes to rest', () => {
  test.each([
    ['on free time', 'e2', 600, 600],
    ['on a meal: beside it, at the nearer end', 'e2', 470, 465],
    ['on a meal, nearer to its end', 'e2', 495, 500],
    ['in the night, where nobody chews: after waking', 'e2', 100, 400],
    ['before sleep', 'e2', 1439, 1365],
    ['a meal at night stays there', 'e1', 100, 100],
    ['past midnight: the last time at which it ends', 'e1', 1439, 1420],
    ['what is sipped lies beside anything', 'e3', 480, 480],
  ])('%s', (_, id, wanted, start) => {
    expect(startOf(moveEvent(day, id, wanted), id)).toBe(start);
  });

  test('a key goes over what stands in the way, and back', () => {
    const over = stepEvent(day, 'e1', 5);
    expect(startOf(over, 'e1')).toBe(485);
    expect(startOf(stepEvent(over, 'e1', 5), 'e1')).toBe(520);
    expect(startOf(stepEvent(stepEvent(over, 'e1', 5), 'e1', -5), 'e1')).toBe(485);
  });

  test('with no room at all it stays', () => {
    const full: AcidDay = {
      ...day,
      events: [meal('a', 400, 720), meal('b', 1120, 260), { id: 'g', kind: 'gum', startMinute: 0, minutes: 10 }],
    };
    expect(findFreeStart(full, full.events[2] as DayEvent, 700)).toBeUndefined();
    expect(moveEvent(full, 'g', 700)).toBe(full);
    expect(addEvent(full, { id: 'w', kind: 'gum', startMinute: 600, minutes: 5 })).toBeUndefined();
  });
});

test('longer by one minute up to ten, then by five, and never into the next thing', () => {
  const lengths = (id: string, direction: 1 | -1, times: number) => {
    let changed = day;
    return Array.from({ length: times }, () => {
      changed = lengthenEvent(changed, id, direction);
      return findEvent(changed, id)?.minutes;
    });
  };
  expect(lengths('e1', -1, 4)).toEqual([15, 10, 9, 8]);
  expect(lengths('e1', 1, 2)).toEqual([25, 25]);
  expect(lengths('e2', -1, 20).at(-1)).toBe(1);
});

test('added in the order of the day, under a name that is free, and taken out again', () => {
  const id = freshId(day);
  const added = addEvent(day, { id, kind: 'water', startMinute: 490, minutes: 2 });
  expect(id).toBe('e4');
  expect(added?.events.map((event) => [event.id, event.startMinute])).toEqual([
    ['e1', 480],
    ['e4', 500],
    ['e2', 505],
    ['e3', 900],
  ]);
  expect(added && removeEvent(added, id)).toEqual(day);
});

test('whatever is done with keys and drags, the day stays one that can be worked out', () => {
  const minute = fc.oneof(fc.constantFrom(0, 399, 400, 480, 500, 505, 1379, 1380, 1439), fc.integer({ min: -100, max: 1600 }));
  const id = fc.constantFrom('e1', 'e2', 'e3');
  const act = fc.oneof(
    fc.tuple(id, minute).map(
      ([i, at]) =>
        (d: AcidDay) =>
          moveEvent(d, i, at),
    ),
    fc.tuple(id, fc.constantFrom(5, -5, 30, -30)).map(
      ([i, by]) =>
        (d: AcidDay) =>
          stepEvent(d, i, by),
    ),
    fc.tuple(id, fc.constantFrom(1, -1) as fc.Arbitrary<1 | -1>).map(
      ([i, by]) =>
        (d: AcidDay) =>
          lengthenEvent(d, i, by),
    ),
    minute.map((at) => (d: AcidDay) => addEvent(d, { id: freshId(d), kind: 'brushing', startMinute: at, minutes: 2 }) ?? d),
  );
  fc.assert(
    fc.property(fc.array(act, { maxLength: 12 }), (acts) => {
      expect(
        findDayProblems(
          acts.reduce((d, next) => next(d), day),
          new Map(),
        ),
      ).toEqual([]);
    }),
  );
});
