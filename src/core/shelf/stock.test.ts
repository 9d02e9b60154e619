import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { demoShelf } from '../../content/demo/shelf.ts';
import { allocate } from './allocate.ts';
import { compareLots, countPacks, isExpired, lotKey, sumLots } from './lots.ts';
import type { LotStock } from './types.ts';
import { withStock } from './withStock.ts';

const TODAY = '2026-11-26';
/** Half on the edge: the last day is today, the day before, the day after, or not known. */
const expiry = fc.oneof(
  fc.constantFrom(TODAY, '2026-11-25', '2026-11-27', null),
  fc.constantFrom('2020-01-31', '2026-06-30', '2027-01-31', '2028-02-29', '2099-12-31'),
);
const lot = fc.constantFrom('A 1', 'a  1', 'B2', null);
const lots = fc.array(fc.record({ lot, expiry, quantity: fc.oneof(fc.constantFrom(0, 1), fc.nat(9)) }), { maxLength: 6 });
const key = ({ lot, expiry }: LotStock) => `${lotKey(lot)} ${expiry}`;

describe('first expiring, first out', () => {
  it('gives all or nothing, never an expired pack, never more than there is, and the first to expire first', () => {
    fc.assert(
      fc.property(lots, fc.oneof(fc.constant(1), fc.integer({ min: 1, max: 20 })), (all, quantity) => {
        const { usable, expired } = countPacks(all, TODAY);
        const given = allocate(all, quantity, TODAY);
        expect(given.ok).toBe(quantity <= usable);
        if (!given.ok) {
          expect(given).toMatchObject({ usable, expired, reason: usable === 0 && expired > 0 ? 'expired' : 'not-enough' });
          return;
        }
        expect(given.takes.reduce((sum, take) => sum + take.quantity, 0)).toBe(quantity);
        expect(given.takes.every((take) => take.quantity > 0 && !isExpired(take, TODAY))).toBe(true);
        const taken = new Map<string, number>();
        for (const take of given.takes) taken.set(key(take), (taken.get(key(take)) ?? 0) + take.quantity);
        const thereOf = (lot: LotStock) => all.filter((l) => key(l) === key(lot)).reduce((sum, l) => sum + l.quantity, 0);
        for (const take of given.takes) expect(taken.get(key(take))).toBeLessThanOrEqual(thereOf(take));
        // Whatever stays untouched expires no earlier than anything that was taken.
        const last = given.takes.at(-1);
        const untouched = all.filter((l) => l.quantity > 0 && !isExpired(l, TODAY) && !taken.has(key(l)));
        for (const left of untouched) expect(last && compareLots(last, left)).toBeLessThanOrEqual(0);
      }),
    );
  });

  test('a lot is good through its last day, and one without a date goes last', () => {
    const all = [
      { lot: 'no date', expiry: null, quantity: 5 },
      { lot: 'late', expiry: '2027-05-31', quantity: 1 },
      { lot: 'today', expiry: TODAY, quantity: 1 },
      { lot: 'gone', expiry: '2026-11-25', quantity: 5 },
    ];
    const given = allocate(all, 3, TODAY);
    expect(given.ok && given.takes.map((take) => [take.lot, take.quantity])).toEqual([
      ['today', 1],
      ['late', 1],
      ['no date', 1],
    ]);
    expect(allocate(all.slice(3), 1, TODAY)).toEqual({ ok: false, reason: 'expired', usable: 0, expired: 5 });
    expect(allocate([], 1, TODAY)).toEqual({ ok: false, reason: 'not-enough', usable: 0, expired: 0 });
  });

  test.each([0, -1, 1.5, Number.NaN])('%s packs are no number of packs', (quantity) => {
    expect(() => allocate([], quantity, TODAY)).toThrow(RangeError);
  });
});

describe('the sum of the moves', () => {
  const move = fc.record({
    lot,
    expiry,
    quantity: fc.oneof(fc.constantFrom(-1, 1), fc.integer({ min: -5, max: 9 })),
    takenBack: fc.oneof(fc.constant(null), fc.constant('wrong item')),
  });

  it('does not hang on the order of the moves, and a move that is taken back leaves no trace in it', () => {
    fc.assert(
      fc.property(fc.array(move, { maxLength: 12 }), fc.nat(11), (moves, at) => {
        const total = sumLots(moves).reduce((sum, { quantity }) => sum + quantity, 0);
        expect(total).toBe(moves.filter((m) => m.takenBack === null).reduce((sum, m) => sum + m.quantity, 0));
        const plain = (list: Parameters<typeof sumLots>[0]) => sumLots(list).map((l) => [lotKey(l.lot), l.expiry, l.quantity]);
        expect(plain([...moves].reverse())).toEqual(plain(moves));
        // After the fact: taking a move back is as if it had never been.
        const without = moves.filter((_, i) => i !== at);
        const corrected = moves.map((m, i) => (i === at ? { ...m, takenBack: 'typed twice' } : m));
        expect(plain(corrected)).toEqual(plain(without));
      }),
    );
  });

  test('the same lot in other letters is the same lot; with another date it is another', () => {
    const moves = [
      { lot: 'a 12', expiry: '2027-01-31', quantity: 3, takenBack: null },
      { lot: 'A  12', expiry: '2027-01-31', quantity: -1, takenBack: null },
      { lot: 'A 12', expiry: null, quantity: 1, takenBack: null },
    ];
    expect(sumLots(moves)).toEqual([
      { lot: 'a 12', expiry: '2027-01-31', quantity: 2 },
      { lot: 'A 12', expiry: null, quantity: 1 },
    ]);
  });
});

describe('what is in stock for a plan', () => {
  const [first, second] = demoShelf;
  if (!first || !second) throw new Error('the demo shelf is empty');
  const inStock = (quantity: number, expiry: string | null, givenHere: readonly string[] = []) =>
    withStock([{ ...first, inStock: false }, second], [{ shelfItemId: first.id, lots: [{ lot: 'A', expiry, quantity }] }], {
      onDate: TODAY,
      givenHere,
    }).map((item) => item.inStock);

  test('follows the packs that may be given; what nobody counts stays as it was said', () => {
    expect(inStock(1, TODAY)).toEqual([true, true]);
    expect(inStock(1, null)).toEqual([true, true]);
    expect(inStock(4, '2026-11-25')).toEqual([false, true]);
    expect(inStock(0, null)).toEqual([false, true]);
    expect(inStock(0, null, [first.id])).toEqual([true, true]);
  });

  test('a practice that counts nothing has the very same shelf', () => {
    expect(withStock(demoShelf, [], { onDate: TODAY })).toBe(demoShelf);
  });
});
