import { expect, test } from 'vitest';
import type { SwabLot } from '../reading/types.ts';
import { lotStanding } from './lotStanding.ts';

const alder: SwabLot = { id: 'alder', name: 'Alder', expiresOn: '2026-01-31' };
const birch: SwabLot = { id: 'birch', name: 'Birch', expiresOn: '2027-01-31' };
const with_ = (verdict: 'same-within' | 'differs' | 'too-few'): SwabLot => ({
  ...birch,
  compared: { lotId: 'alder', studyId: 's', onDate: '2026-01-02', verdict },
});
const wentOn: SwabLot = { ...birch, uncompared: { by: 'Ines', at: '2026-01-02T09:00:00Z', reason: 'the old lot is used up' } };

test.each([
  ['the only lot', birch, [birch], 'first'],
  ['the one that ends first', alder, [alder, birch], 'first'],
  ['a later one', birch, [alder, birch], 'not-compared'],
  ['one compared, alike or not', with_('differs'), [alder, with_('differs')], 'compared'],
  ['too few pairs to say', with_('too-few'), [alder, with_('too-few')], 'not-compared'],
  ['with a reason', wentOn, [alder, wentOn], 'went-on'],
  ['compared after a reason', { ...wentOn, ...with_('same-within') }, [alder, wentOn], 'compared'],
  [
    'the old lot of a comparison',
    { ...alder, expiresOn: '2027-06-30' },
    [{ ...alder, expiresOn: '2027-06-30' }, with_('same-within')],
    'first',
  ],
] as const)('%s', (_, lot, lots, standing) => expect(lotStanding(lot, lots)).toBe(standing));
