import { describe, expect, it, test } from 'vitest';
import { isSignature, mayOverride, mayRelease } from './mayRelease.ts';

const order = { name: 'High-fluoride order', date: '2026-02-01', signedOn: '2026-11-25' };

describe('mayRelease', () => {
  test.each([
    ['anyone', [], undefined, true],
    ['anyone', ['assistant'], undefined, true],
    ['prescription', ['dentist'], undefined, true],
    ['dentist', ['dentist', 'lead'], undefined, true],
    ['prescription', ['hygienist'], undefined, false],
    ['prescription', ['hygienist', 'lead'], undefined, false],
    ['dentist', ['assistant'], undefined, false],
    ['prescription', [], undefined, false],
    ['prescription', ['hygienist'], order, true],
    ['prescription', [], order, false],
    ['prescription', ['hygienist'], { ...order, name: ' ' }, false],
    ['prescription', ['hygienist'], { ...order, date: 'soon' }, false],
    ['prescription', ['hygienist'], { ...order, signedOn: '2026-01-31' }, false],
  ] as const)('%s by %j under %j: %s', (release, roles, standingOrder, expected) => {
    expect(mayRelease(roles, { release }, standingOrder)).toBe(expected);
  });
});

it('lets only a dentist lift a rule, and only with a reason', () => {
  expect(mayOverride(['dentist'], 'weighed')).toBe(true);
  expect(mayOverride(['dentist'], ' ')).toBe(false);
  expect(mayOverride(['hygienist', 'lead'], 'weighed')).toBe(false);
});

test.each([
  [{ shelfItemId: 'a', by: 'Dr. A', at: '2026-11-25T10:00:00Z' }, true],
  [{ shelfItemId: 'a', by: '', at: '2026-11-25T10:00:00Z' }, false],
  [{ shelfItemId: 'a', by: 'Dr. A', at: ' ' }, false],
  [{ shelfItemId: 'a', by: 'A. Hygienist', at: '2026-11-25T10:00:00Z', standingOrder: { name: '', date: '2026-01-01' } }, false],
  [{ shelfItemId: 'a', by: 'A. Hygienist', at: '2026-11-25T10:00:00Z', standingOrder: { name: 'Varnish', date: '2026-01-01' } }, true],
])('%j is a signature: %s', (signed, expected) => {
  expect(isSignature(signed)).toBe(expected);
});
