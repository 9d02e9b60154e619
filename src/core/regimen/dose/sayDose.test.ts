import { expect, it } from 'vitest';
import { agents } from '../../../content/agents.ts';
import { demoShelf } from '../../../content/demo/shelf.ts';
import { regimenTables as tables } from '../../../content/regimenTables.ts';
import type { ShelfItem } from '../types.ts';
import { houseProducts } from './houseProducts.ts';
import { sayDose } from './sayDose.ts';

const child = { ageYears: 8, ageMonths: 96, weightKg: 26 };
const say = (agentId: string, use: object = {}, facts: object = {}) =>
  sayDose({ agentId }, { timesPerDay: 3, amount: '1', ...use }, { ...child, ...facts }, tables);

it('says a day of xylitol with the weight, asks for it, and always warns of dogs', () => {
  expect(say('XYLITOL', { amountG: 2 })[0]).toBe(
    'Xylitol 6 g a day in 3 uses, 0.077 g/kg at once and 0.23 g/kg a day: within what is borne.',
  );
  expect(say('XYLITOL', { amountG: 5 })[0]).toContain('more than is borne');
  expect(say('XYLITOL', { amountG: 2 }, { weightKg: undefined })[0]).toContain('ask for the weight');
  expect(say('XYLITOL', { amountG: 2 }, { weightKg: 4 })[0]).toContain('ask for the weight');
  for (const use of [{}, { amountG: 2 }]) expect(say('XYLITOL', use)[1]).toContain('dangerous to dogs');
});

it('says silver fluoride at the visit and the course of chlorhexidine', () => {
  expect(say('SDF38')[0]).toContain('At most 65 µL a visit');
  expect(say('SDF38', {}, { weightKg: undefined })[0]).toContain('the dentist measures the volume');
  expect(say('CHX_RINSE', { timesPerDay: 2, amountMl: 15, courseDays: 14 })).toEqual(['For 14 days, 420 mL in all, then it ends.']);
  expect(say('F_PASTE_STD')).toEqual([]);
});

it('takes from a plan what holds fluoride or may, and believes no pack in another unit', () => {
  const tube: ShelfItem = { ...(demoShelf[0] as ShelfItem), packAmount: { value: 75, unit: 'mL' } };
  const gum = demoShelf.find((i) => i.agentId === 'XYLITOL') as ShelfItem;
  const unread: ShelfItem = { ...tube, id: 'unread', compound: undefined, percent: undefined, fluoridePpm: undefined };
  const lines = [tube, gum, unread].map(({ id }) => ({ shelfItemId: id }));
  const products = houseProducts([...lines, { shelfItemId: 'gone' }], [tube, gum, unread], agents);
  expect(products.map(({ ppm, unit, packAmount }) => [ppm === undefined, unit, packAmount])).toEqual([
    [false, 'g', undefined],
    [true, 'g', undefined],
  ]);
});
