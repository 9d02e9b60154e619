import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { addDays } from '../visit/calendar.ts';
import { listReorder, type ReorderInput } from './listReorder.ts';
import { countPacks } from './lots.ts';

const TODAY = '2026-11-26';
const [paste] = demoShelf;
if (!paste) throw new Error('the demo shelf is empty');

type Entry = ReorderInput['counted'][number];
const entry = (lots: Entry['lots'], given = 0, since = '2026-01-01'): Entry => ({ shelfItemId: paste.id, lots, given, since });
const lot = (quantity: number, expiry: string | null = '2027-12-31') => ({ lot: 'A', expiry, quantity });
const reorder = (minimumLevel: number | undefined, counted: Entry, leadDays?: number) =>
  listReorder({ items: [{ ...paste, minimumLevel }], counted: [counted], today: TODAY, leadDays });

test('at the minimum or below, and not above it', () => {
  expect(reorder(3, entry([lot(4)]))).toEqual([]);
  expect(reorder(3, entry([lot(3)]))).toMatchObject([{ usable: 3, expiring: 0, suggested: 1 }]);
  expect(reorder(3, entry([lot(0)]))).toMatchObject([{ usable: 0, suggested: 4 }]);
  expect(reorder(0, entry([lot(1)]))).toEqual([]);
  expect(reorder(0, entry([]))).toMatchObject([{ usable: 0, suggested: 1 }]);
});

test('packs that expire before an order arrives do not count; those that are good until it arrives do', () => {
  const arrives = addDays(TODAY, 10);
  expect(reorder(3, entry([lot(4, arrives)]), 10)).toEqual([]);
  expect(reorder(3, entry([lot(4, addDays(arrives, -1)), lot(1)]), 10)).toMatchObject([{ usable: 5, expiring: 4, suggested: 3 }]);
  expect(reorder(3, entry([lot(4, addDays(arrives, -1))]))).toEqual([]);
});

test('the suggestion covers the lead time and a month at the rate of the last 90 days', () => {
  // 9 packs in 90 days = 0.1 a day; 20 days of lead time and 30 of cover take 5; one above the minimum of 2, less the 2 there are: 6.
  expect(reorder(2, entry([lot(2)], 9), 20)).toMatchObject([{ perMonth: 3, suggested: 6 }]);
  // Counted for 3 days: the rate is taken over 30, not over 3.
  expect(reorder(2, entry([lot(2)], 3, '2026-11-23'), 0)).toMatchObject([{ perMonth: 3, suggested: 4 }]);
});

test('without a minimum only what is out is named, with no number to order; what nobody counts is not named', () => {
  expect(reorder(undefined, entry([lot(1)]))).toEqual([]);
  expect(reorder(undefined, entry([lot(5, '2026-11-25')]))).toMatchObject([{ usable: 0, suggested: null }]);
  expect(listReorder({ items: [{ ...paste, minimumLevel: 5 }], counted: [], today: TODAY, leadDays: 7 })).toEqual([]);
});

it('lists exactly what is at its minimum when an order arrives, and what it suggests brings it above', () => {
  const expiry = fc.oneof(
    fc.constantFrom(null, TODAY, addDays(TODAY, 7), addDays(TODAY, 6), addDays(TODAY, -1)),
    fc.constant('2027-06-30'),
  );
  const lots = fc.array(fc.record({ lot: fc.constant('A'), expiry, quantity: fc.oneof(fc.constantFrom(0, 1), fc.nat(30)) }), {
    maxLength: 4,
  });
  fc.assert(
    fc.property(
      lots,
      fc.oneof(fc.constant(0), fc.nat(20)),
      fc.nat(60),
      fc.constantFrom(0, 7, undefined),
      (all, minimum, given, leadDays) => {
        const lasting = countPacks(all, addDays(TODAY, leadDays ?? 0)).usable;
        const [line, ...more] = reorder(minimum, entry(all, given), leadDays);
        expect(more).toEqual([]);
        expect(line !== undefined).toBe(lasting <= minimum);
        if (!line) return;
        expect(line.usable - line.expiring).toBe(lasting);
        expect(Number.isInteger(line.suggested)).toBe(true);
        expect(lasting + (line.suggested ?? 0)).toBeGreaterThan(minimum);
      },
    ),
  );
});
