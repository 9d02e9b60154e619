import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { coverOf, holdsOn, sayCovers, sayLeft, sayOver } from './signatureCover.ts';

const today = '2026-11-25';
const place = { given: 0, today, orderHolds: true };

describe('coverOf', () => {
  test.each([
    ['says nothing: one pack', {}, {}, 1, null],
    ['says nothing, one was given', {}, { given: 1 }, 0, 'packs'],
    ['three, two given', { packs: 3 }, { given: 2 }, 1, null],
    ['more given than signed for', { packs: 3 }, { given: 5 }, 0, 'packs'],
    ['on its last day', { until: today }, {}, 1, null],
    ['the day after', { packs: 3, until: '2026-11-24' }, {}, 0, 'until'],
    ['its order has ended', { packs: 3 }, { orderHolds: false }, 0, 'order'],
    ['the day says it before the packs', { until: '2026-11-24' }, { given: 1 }, 0, 'until'],
  ] as const)('%s', (_, covers, changed, left, over) => {
    expect(coverOf(covers, { ...place, ...changed })).toMatchObject({ left, over });
  });

  it('never leaves a pack once it is over, nor more than it was signed for', () => {
    const small = fc.oneof(fc.constantFrom(0, 1, 2), fc.integer({ min: 0, max: 100 }));
    const packs = fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined });
    const until = fc.constantFrom(undefined, '2026-11-24', today, '2026-11-26');
    fc.assert(
      fc.property(packs, until, small, fc.boolean(), (packs, until, given, orderHolds) => {
        const { left, over } = coverOf({ packs, until }, { given, today, orderHolds });
        expect(left > 0).toBe(over === null);
        expect(left).toBeLessThanOrEqual(packs ?? 1);
        if (!holdsOn({ until }, today) || !orderHolds) expect(left).toBe(0);
      }),
    );
  });
});

const signed = { name: 'Dr. Ahlgren', at: '2026-11-25T10:00:00Z' };

test.each([
  [sayCovers({}), 'one pack in all, no last day'],
  [sayCovers({ packs: 3, until: '2027-02-01' }), '3 packs in all, to 2027-02-01'],
  [sayLeft(0), 'none left'],
  [sayLeft(2), '2 left'],
  [sayOver(null, null), 'nobody has signed for it'],
  [sayOver(signed, 'packs'), 'Dr. Ahlgren signed for one pack, and it was given'],
  [sayOver({ ...signed, packs: 2 }, 'packs'), 'Dr. Ahlgren signed for 2 packs, and they were given'],
  [sayOver({ ...signed, until: '2027-02-01' }, 'until'), 'the signature of Dr. Ahlgren held to 2027-02-01'],
  [
    sayOver({ ...signed, standingOrder: { name: 'Strong paste', date: '2026-01-01' } }, 'order'),
    'the standing order "Strong paste" that it was signed on has ended',
  ],
])('"%s"', (said, words) => {
  expect(said).toBe(words);
});
