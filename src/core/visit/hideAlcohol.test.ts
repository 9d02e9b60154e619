import { expect, test } from 'vitest';
import { foodsById } from '../../content/foods.ts';
import { questions } from '../../content/questions.ts';
import { sayMove } from '../plaque/day/sayDay.ts';
import type { AcidDay, EatingEvent, Portion } from '../plaque/day/types.ts';
import { hideAlcohol, isAlcoholReleased } from './hideAlcohol.ts';
import type { VisitInput } from './types.ts';

const eaten = (id: string, portions: readonly Portion[], rest: Partial<EatingEvent> = {}): EatingEvent => ({
  id,
  kind: 'eating',
  occasion: 'between-meals',
  startMinute: 1200,
  minutes: 20,
  portions,
  ...rest,
});
const day = (...events: AcidDay['events']): AcidDay => ({ wakeMinute: 400, sleepMinute: 1380, events });
const hidden = (event: AcidDay['events'][number], language?: 'en' | 'es') =>
  JSON.stringify(hideAlcohol(day(event), { foods: foodsById, ...(language && { language }) }));

test.each(['beer', 'red-wine', 'white-wine', 'dessert-wine', 'spirits', 'pina-colada'])('%s is a drink, whatever she calls it', (food) => {
  const said = hidden(eaten('e1', [{ food, amount: 100 }], { label: 'as every evening', sipped: true }));
  expect(said).toContain('"A drink"');
  expect(said).not.toContain(food);
  expect(said).not.toContain('as every evening');
  expect(said).toContain('"startMinute":1200');
});

test('what is eaten with it keeps its name, and what was typed from a label is looked at too', () => {
  const meal = hidden(
    eaten(
      'e1',
      [
        { food: 'apple', amount: 150 },
        { food: 'red-wine', amount: 150 },
      ],
      { label: 'Dinner' },
    ),
  );
  expect(meal).toContain('apple');
  expect(meal).not.toMatch(/wine|Dinner/);
  const typed = { name: 'Rum and cola', unit: 'mL', sugarsGPer100: 8, retention: 'clears' } as const;
  expect(hidden(eaten('e1', [{ typed, amount: 250 }]), 'es')).toMatch(/"Una bebida"/);
});

test('an own word that may tell of it goes, the food under it stays', () => {
  const said = hidden(eaten('e1', [{ food: 'apple', amount: 150 }], { label: 'Apple after the wine' }));
  expect(said).toContain('apple');
  expect(said).not.toContain('wine');
  expect(hidden({ id: 'g', kind: 'gum', label: 'después de la cerveza', startMinute: 800, minutes: 10 })).not.toContain('cerveza');
});

test('everything else is the very same event: cola, root beer, ginger ale, malt without alcohol, a drink of water', () => {
  const foods = ['cola', 'root-beer', 'ginger-ale', 'non-alcoholic-malt', 'apple-juice'];
  const plain = day(...foods.map((food, i) => eaten(`e${i}`, [{ food, amount: 100 }], { label: 'Original rumba import' })), {
    id: 'w',
    kind: 'water',
    startMinute: 100,
    minutes: 2,
  });
  for (const [i, event] of hideAlcohol(plain, { foods: foodsById }).events.entries()) expect(event).toBe(plain.events[i]);
});

test('it still reads as a sentence', () => {
  const beer = day(eaten('e1', [{ food: 'beer', amount: 330 }], { sipped: true }));
  expect(sayMove({ kind: 'drop', eventId: 'e1' }, hideAlcohol(beer, { foods: foodsById }), foodsById)).toBe('Leaving out a drink');
});

test('released only where a professional released that she spoke of alcohol, heard by the same person', () => {
  expect(questions.find(({ id }) => id === 'private_conditions')?.choices?.map(({ id }) => id)).toContain('drug-or-alcohol-misuse');
  const visit = (heard: 'patient' | 'parent', choice = 'drug-or-alcohol-misuse') =>
    ({
      speaker: { who: 'patient' },
      answers: { private_conditions: { how: 'asked', value: [choice] } },
      released: { private_conditions: { by: 'Ines', at: '2026-11-25T10:00:00Z', heard } },
    }) as unknown as VisitInput['visit'];
  expect(isAlcoholReleased(visit('patient'))).toBe(true);
  expect(isAlcoholReleased(visit('parent'))).toBe(false);
  expect(isAlcoholReleased(visit('patient', 'low-mood'))).toBe(false);
});
