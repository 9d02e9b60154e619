import { expect, it } from 'vitest';
import { demoShelf } from '../../../content/demo/shelf.ts';
import type { PlannedUse } from '../planFluoride.ts';
import type { ShelfItem } from '../types.ts';
import { firstRefill, supplyOf } from './supplyOf.ts';

const use = (id: string, state: PlannedUse['state'] = 'proposed', rest: Partial<ShelfItem['use']> = {}): PlannedUse => {
  const item = demoShelf.find((i) => i.id === id);
  if (!item) throw new Error(`${id} is not on the demo shelf`);
  return { item, use: { ...item.use, ...rest }, state };
};

it('says how long each pack for the home lasts from the day it is begun, and which runs out first', () => {
  const supply = supplyOf([use('paste-naf-1450'), use('gum-xylitol'), use('varnish-naf-resin')], '2026-11-25');
  expect(supply).toEqual([
    { shelfItemId: 'paste-naf-1450', days: 50, refillOn: '2027-01-14' },
    { shelfItemId: 'gum-xylitol', days: 30, refillOn: '2026-12-25' },
  ]);
  expect(firstRefill(supply)).toBe('2026-12-25');
});

it('rounds days down, and a third of a gram thirty times over is no day short', () => {
  expect(supplyOf([use('paste-naf-1450', 'proposed', { amountG: 1.1 })], undefined)[0]?.days).toBe(45);
  expect(supplyOf([use('paste-naf-1450', 'proposed', { amountG: 0.1, timesPerDay: 3 })], undefined)[0]?.days).toBe(333);
});

it.each([
  ['waits for a signature', use('paste-naf-1450', 'waiting-for-signature'), '2026-11-25', 50],
  ['has no start', use('paste-naf-1450'), undefined, 50],
  ['is a course that ends first', use('paste-naf-1450', 'signed', { courseDays: 14 }), '2026-11-25', 50],
  ['has no known amount', use('paste-naf-1450', 'proposed', { amountG: undefined }), '2026-11-25', null],
  ['lasts for more than ten years', use('paste-naf-1450', 'proposed', { amountG: 0.001 }), '2026-11-25', 50_000],
] as const)('no refill date where it %s', (_what, planned, startsOn, days) => {
  const supply = supplyOf([planned], startsOn);
  expect(supply).toEqual([{ shelfItemId: 'paste-naf-1450', days, refillOn: null }]);
  expect(firstRefill(supply)).toBeNull();
});
