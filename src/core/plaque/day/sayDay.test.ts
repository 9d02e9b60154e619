import { describe, expect, it, test } from 'vitest';
import { foodsById } from '../../../content/foods.ts';
import { sayDay, sayEvent, sayGain, sayMinutesRange, sayMove } from './sayDay.ts';
import type { AcidDay, EatingEvent } from './types.ts';

test.each([
  [118, 184, '2 to 3 hours'],
  [42, 88, '40 to 90 minutes'],
  [95, 152, '100 minutes to 2 h 30 min'],
  [18, 22, 'about 20 minutes'],
  [0, 4, 'less than 10 minutes'],
  [2, 31, 'up to 30 minutes'],
  [125, 190, '2 h 10 min to 3 h 10 min'],
])('%f to %f minutes are said as "%s"', (low, high, said) => {
  expect(sayMinutesRange({ low, high })).toBe(said);
});

const cola: EatingEvent = {
  id: 'cola',
  kind: 'eating',
  occasion: 'between-meals',
  sipped: true,
  startMinute: 870,
  minutes: 120,
  portions: [{ food: 'cola', amount: 500 }],
};
const lunch: EatingEvent = { ...cola, id: 'lunch', label: 'Lunch', occasion: 'meal', sipped: undefined, startMinute: 750, minutes: 20 };
const day: AcidDay = { wakeMinute: 420, sleepMinute: 1380, events: [lunch, cola] };
const join = { kind: 'join', eventId: 'cola', mealId: 'lunch' } as const;
const input = { day, foods: foodsById, minutes: 150, band: { low: 118, high: 184 }, costs: [{ eventId: 'cola', minutes: 100 }] };

describe('sayDay', () => {
  it('says the range, what most of it comes from, and the change that shortens it most', () => {
    const gains = [{ moves: [join], rank: 1, isAsked: true, fewerMinutes: { low: 38, high: 61 } }];
    expect(sayDay({ ...input, gains })).toEqual({
      headline: 'In the model, roughly 2 to 3 hours a day on the acid side, mostly the sipped cola.',
      change: 'Having the sipped cola with lunch would shorten that most.',
      caution: 'This compares days; it does not measure teeth.',
    });
  });

  it('names no change where the draws do not agree, and no event that is less than half', () => {
    const gains = [{ moves: [join], rank: 1, isAsked: true }];
    const said = sayDay({ ...input, gains, costs: [{ eventId: 'cola', minutes: 60 }] });
    expect(said.change).toBeUndefined();
    expect(said.headline).toBe('In the model, roughly 2 to 3 hours a day on the acid side.');
    expect(sayDay({ ...input, gains: [], costs: [] }).change).toBeUndefined();
  });

  it('gives minutes only where there are any to give', () => {
    expect(sayGain({ moves: [join], rank: 1, isAsked: true, fewerMinutes: { low: 38, high: 61 } })).toBe(
      'in the model, 40 to 60 minutes less a day',
    );
    expect(sayGain({ moves: [join], rank: 2, isAsked: true })).toBe('place 2; the model cannot tell how much');
    expect(sayGain({ moves: [join], rank: 9, isAsked: false })).toBe('place 9');
  });

  it('names an event by the person’s word, else by what was taken', () => {
    expect(sayEvent(lunch, foodsById)).toBe('lunch');
    expect(sayEvent({ ...lunch, label: 'TV snack' }, foodsById)).toBe('TV snack');
    expect(sayEvent({ ...lunch, label: ' ' }, foodsById)).toBe('cola');
    expect(sayMove({ kind: 'water', eventId: 'cola' }, day, foodsById)).toBe('Water instead of the sipped cola');
    expect(sayMove({ kind: 'gum', eventId: 'lunch' }, day, foodsById)).toBe('Sugar-free gum after lunch');
    expect(sayMove({ kind: 'drop', eventId: 'cola' }, day, foodsById)).toBe('Leaving out the sipped cola');
  });
});
