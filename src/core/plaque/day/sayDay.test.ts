import { describe, expect, it, test } from 'vitest';
import { foodsById } from '../../../content/foods.ts';
import type { Interval } from './dayBand.ts';
import { sayDay, sayEvent, sayGain, sayHeadline, sayMinutesRange, sayMove } from './sayDay.ts';
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
const zero = { low: 0, high: 0 };
const input = {
  day,
  foods: foodsById,
  minutes: 150,
  band: { low: 118, high: 184 },
  atRest: { minutes: zero, awakeMinutes: zero, addedByFood: { low: 118, high: 184 } },
  costs: [{ eventId: 'cola', minutes: 100 }],
};

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

  it('says only once that a figure is not exact', () => {
    const said = (low: number, high: number) => sayDay({ ...input, band: { low, high }, costs: [], gains: [] }).headline;
    expect(said(0, 4)).toBe('In the model, less than 10 minutes a day on the acid side.');
    expect(said(18, 22)).toBe('In the model, about 20 minutes a day on the acid side.');
    expect(said(2, 31)).toBe('In the model, up to 30 minutes a day on the acid side.');
  });

  it('tells what food adds where plaque lies near the line with nothing eaten', () => {
    const said = (minutes: number, awake: number, addedByFood: Interval) => {
      const atRest = { minutes: { low: 0, high: minutes }, awakeMinutes: { low: 0, high: awake }, addedByFood };
      return sayDay({ ...input, band: { low: 120, high: 720 }, atRest, gains: [] }).headline;
    };
    expect(said(60, 59, { low: 118, high: 302 })).toBe(
      'In the model, this plaque lies near the line at night even when nothing is eaten. What is eaten and drunk adds roughly 2 to 5 hours a day on the acid side, mostly the sipped cola.',
    );
    expect(said(400, 60, { low: 118, high: 302 })).toMatch(/lies near the line day and night even when/);
    expect(said(59, 59, { low: 118, high: 302 })).toMatch(/roughly 2 to 12 hours a day/);
  });

  it('tells the lower end alone of a range wider than a quarter of a day', () => {
    const said = (low: number, high: number) => {
      const atRest = { minutes: { low: 0, high: 300 }, awakeMinutes: zero, addedByFood: { low, high } };
      return sayDay({ ...input, atRest, costs: [], gains: [] }).headline;
    };
    expect(said(331, 1300)).toMatch(/adds at least 5 h 30 min a day on the acid side; how much more, the model cannot tell\.$/);
    expect(said(331, 691)).toMatch(/adds roughly 5 h 30 min to 11 h 30 min a day/);
    expect(said(2, 400)).toMatch(/adds up to 6 h 40 min a day/);
  });

  it('speaks Spanish, with the words of ready-made days, and leaves the person’s own', () => {
    const said = (label: string | undefined) =>
      sayHeadline({ ...input, day: { ...day, events: [lunch, { ...cola, label }] } }, 'es', {
        cola: { en: 'Cola', es: 'Refresco de cola' },
      });
    expect(said('Cola')).toBe(
      'En el modelo, aproximadamente de 2 a 3 horas al día en el lado ácido, sobre todo: refresco de cola a sorbos.',
    );
    expect(said('At the desk')).toMatch(/sobre todo: at the desk a sorbos\.$/);
    expect([4, 22, 31, 152].map((high) => sayMinutesRange({ low: high === 22 ? 18 : high === 152 ? 95 : 0, high }, 'es'))).toEqual([
      'menos de 10 minutos',
      'cerca de 20 minutos',
      'hasta 30 minutos',
      'de 100 minutos a 2 h 30 min',
    ]);
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
