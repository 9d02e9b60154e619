import { expect, test } from 'vitest';
import { monthlyCostCents } from './monthlyCostCents.ts';
import type { ShelfItem } from './types.ts';

const pack = (rest: Partial<ShelfItem>, use: Partial<ShelfItem['use']>) => {
  const item = { packAmount: { value: 300, unit: 'mL' }, priceCents: 1_000, ...rest } as ShelfItem;
  return { item, use: { timesPerDay: 1, amount: 'x', ...use } };
};

test('counts 30 days, a course only its days, and rounds each item up', () => {
  expect(monthlyCostCents([pack({}, { amountMl: 10 })])).toBe(1_000);
  expect(monthlyCostCents([pack({}, { amountMl: 10, courseDays: 7 })])).toBe(234);
  expect(monthlyCostCents([pack({}, { amountMl: 10, courseDays: 90 })])).toBe(1_000);
  expect(monthlyCostCents([pack({ packAmount: { value: 90, unit: 'piece' } }, { timesPerDay: 3 }), pack({}, { amountMl: 1 })])).toBe(1_100);
});

test('says nothing when a price, a pack size or an amount is not known, and leaves out what is done at the visit', () => {
  expect(monthlyCostCents([pack({ priceCents: undefined }, { amountMl: 10 }), pack({}, { amountMl: 10 })])).toBeNull();
  expect(monthlyCostCents([pack({ packAmount: undefined }, { amountMl: 10 })])).toBeNull();
  expect(monthlyCostCents([pack({}, { amountG: 10 })])).toBeNull();
  expect(monthlyCostCents([pack({ priceCents: undefined }, { atVisit: true })])).toBe(0);
  expect(monthlyCostCents([])).toBe(0);
});
