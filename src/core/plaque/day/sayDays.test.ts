import { expect, test } from 'vitest';
import { foodsById } from '../../../content/foods.ts';
import { type SaidDay, sayDays } from './sayDays.ts';
import type { EatingEvent } from './types.ts';

const zero = { low: 0, high: 0 };
const snack = (id: string, food: string, more: Partial<EatingEvent> = {}): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'between-meals',
  startMinute: 870,
  minutes: 10,
  portions: [{ food, amount: 100 }],
  ...more,
});
const told = (events: readonly EatingEvent[], costs: readonly number[], [low, high]: readonly [number, number]): SaidDay => ({
  day: { wakeMinute: 420, sleepMinute: 1380, events },
  minutes: (low + high) / 2,
  band: { low, high },
  atRest: { minutes: zero, awakeMinutes: zero, addedByFood: { low, high } },
  costs: events.map(({ id }, i) => ({ eventId: id, minutes: costs[i] ?? 0 })),
});
const cola = (id: string) => snack(id, 'cola', { sipped: true, label: 'Break' });
const say = (days: readonly SaidDay[], language: 'en' | 'es' = 'en') => sayDays(days, foodsById, language, {});

const three = [
  told([cola('a'), snack('b', 'banana')], [90, 30], [118, 184]),
  told([snack('a', 'banana'), snack('lunch', 'cola', { occasion: 'meal' })], [40, 60], [121, 242]),
  told([cola('x')], [80], [150, 200]),
];

test('the lowest to the highest of the days, and what comes back most, by what was taken', () => {
  expect(say(three)).toBe(
    'In the model, over the 3 days described, roughly 2 to 4 hours a day on the acid side. What comes back most between meals: the sipped cola, on 2 of the 3 days.',
  );
  expect(say(three, 'es')).toMatch(/^En el modelo, en los 3 días descritos, aproximadamente de 2 a 4 horas al día.* en 2 de los 3 días\.$/);
});

test('of two that come back as often, the one with more minutes; meals and what costs next to nothing are not named', () => {
  expect(say(three)).not.toMatch(/banana/);
  const [first, , third] = three;
  if (!first || !third) throw new Error('three days');
  const meal = snack('m', 'banana', { occasion: 'meal' });
  expect(say([told([meal], [80], [60, 80]), told([meal], [80], [60, 80])])).not.toMatch(/comes back/);
  expect(say([told([cola('a')], [9], [60, 80]), told([cola('a')], [9], [60, 80])])).not.toMatch(/comes back/);
  expect(say([first, told([snack('q', 'apple')], [20], [60, 80])])).not.toMatch(/comes back/);
});

test('one day is said as a day, none not at all', () => {
  expect(say(three.slice(0, 1))).toBe('In the model, roughly 2 to 3 hours a day on the acid side, mostly the sipped break.');
  expect(say([])).toBe('');
});

test('where plaque lies near the line on one of them, all are told by what food adds', () => {
  const near = (day: SaidDay, added: readonly [number, number], awake = 0): SaidDay => ({
    ...day,
    atRest: { minutes: { low: 0, high: 300 }, awakeMinutes: { low: 0, high: awake }, addedByFood: { low: added[0], high: added[1] } },
  });
  const [first, second, third] = three;
  if (!first || !second || !third) throw new Error('three days');
  expect(say([near(first, [60, 180]), second])).toMatch(
    /^In the model, this plaque lies near the line at night even when nothing is eaten\. Over the 2 days described, what is eaten and drunk adds roughly 1 to 4 hours a day/,
  );
  expect(say([first, near(second, [120, 600], 90), third])).toMatch(/day and night .* adds at least 2 hours a day/);
});
