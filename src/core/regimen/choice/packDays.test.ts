import { expect, it } from 'vitest';
import type { ShelfItem } from '../types.ts';
import { packDays } from './packDays.ts';

const days = (value: number, unit: 'g' | 'mL' | 'piece', use: Partial<ShelfItem['use']>) =>
  packDays({ packAmount: { value, unit } }, { timesPerDay: 1, amount: 'as told', ...use });

// Arithmetic from amount and use: derived; 51 g at 1 g twice a day "about a month" in one maker-neutral source. Exact.
it.each([
  ['paste, grown up', days(100, 'g', { amountG: 1, timesPerDay: 2 }), 50],
  ['paste, pea', days(100, 'g', { amountG: 0.25, timesPerDay: 2 }), 200],
  ['paste, smear', days(100, 'g', { amountG: 0.1, timesPerDay: 2 }), 500],
  ['5,000 ppm, twice a day', days(51, 'g', { amountG: 1, timesPerDay: 2 }), 25.5],
  ['5,000 ppm, three times a day', days(51, 'g', { amountG: 1, timesPerDay: 3 }), 17],
  ['rinse 0.05 %', days(500, 'mL', { amountMl: 10 }), 50],
  ['rinse 0.2 %, weekly', days(43, 'mL', { amountMl: 10, timesPerDay: 1 / 7 }), 30.1],
  ['chlorhexidine, twice a day', days(473, 'mL', { amountMl: 15, timesPerDay: 2 }), 473 / 30],
  ['gum, six pieces a day', days(180, 'piece', { timesPerDay: 6 }), 30],
  ['bicarbonate, five times a day', days(375, 'g', { amountG: 2.5, timesPerDay: 5 }), 30],
])('%s', (_what, given, expected) => {
  expect(given).toBeCloseTo(expected, 9);
});

it.each([
  ['an amount in another unit', days(100, 'mL', { amountG: 1 })],
  ['no amount', days(100, 'g', {})],
  ['no use in a day', days(100, 'g', { amountG: 1, timesPerDay: 0 })],
  ['use at the visit', days(10, 'mL', { amountMl: 0.4, atVisit: true })],
])('%s: not known', (_what, given) => {
  expect(given).toBeUndefined();
});
