import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findNearSwab, isTooNear } from './nearSwab.ts';

const NOON = '2026-03-03T12:00:00Z';
const swab = (takenAt: string, from: 'visit' | 'study' = 'visit') => ({ takenAt, from });

describe('a swab within 24 hours of another', () => {
  it.each([
    ['a minute short of a day before', '2026-03-02T12:01:00Z', true],
    ['a day before', '2026-03-02T12:00:00Z', false],
    ['a minute short of a day after', '2026-03-04T11:59:00Z', true],
    ['a day after', '2026-03-04T12:00:00Z', false],
    ['the same moment in another zone', '2026-03-03T13:00:00+01:00', true],
  ])('%s', (_, other, is) => {
    expect(isTooNear(NOON, other)).toBe(is);
    expect(findNearSwab(NOON, [swab(other)])).toEqual(is ? swab(other) : undefined);
  });

  it('of several the nearest is named, before or after', () => {
    const after = swab('2026-03-03T20:00:00Z', 'study');
    expect(findNearSwab(NOON, [swab('2026-03-03T02:00:00Z'), after, swab('2026-03-01T12:00:00Z')])).toEqual(after);
    expect(findNearSwab(NOON, [])).toBeUndefined();
  });

  it('which of the two came first does not matter', () => {
    const day = 86_400_000;
    const gap = fc.oneof(fc.constantFrom(-day, 1 - day, -1, 0, 1, day - 1, day), fc.integer({ min: -3 * day, max: 3 * day }));
    fc.assert(
      fc.property(gap, (ms) => {
        const other = new Date(Date.parse(NOON) + ms).toISOString();
        expect(isTooNear(NOON, other)).toBe(isTooNear(other, NOON));
        expect(isTooNear(NOON, other)).toBe(ms > -day && ms < day);
      }),
    );
  });
});
