import { describe, expect, it, test } from 'vitest';
import { testMeter as meter } from '../../../test/testMeter.ts';
import { checkReading } from './checkReading.ts';
import type { SwabReading } from './types.ts';

const lots = [{ id: 'lot-1', name: '24-118', expiresOn: '2026-12-31' }];
const now = '2026-07-03T10:40:00+01:00';

describe('checkReading', () => {
  test.each<[SwabReading, string, RegExp]>([
    [{ rlu: -5 }, 'rlu', /below 0/],
    [{ rlu: Number.NaN }, 'rlu', /number/],
    [{ rlu: Number.POSITIVE_INFINITY }, 'rlu', /number/],
    [{ rlu: 39 }, 'rlu', /lowest.*40/],
    [{ rlu: 60_001 }, 'rlu', /highest.*60,000/],
    [{ rlu: 0 }, 'rlu', /lowest/],
    [{ takenAt: '2026-07-03 10:36' }, 'takenAt', /zone/],
    [{ takenAt: '2026-07-03T11:00:00+01:00' }, 'takenAt', /future/],
    [{ activatedAt: '10:36' }, 'activatedAt', /zone/],
    [{ activatedAt: '2026-07-03T11:00:00+01:00' }, 'activatedAt', /future/],
    [{ notTakenNote: 'asleep' }, 'notTakenNote', /reason/],
    [{ lotId: 'lot-2' }, 'lotId', /no lot/],
    [{ minutesSinceEating: -1 }, 'minutesSinceEating', /0 or more/],
    [{ minutesSinceRinsing: Number.NaN }, 'minutesSinceRinsing', /0 or more/],
    [{ bound: 'at-most' }, 'bound', /number/],
    [{ failed: true, rlu: 500 }, 'failed', /no number/],
    [{ notTaken: 'declined', rlu: 500 }, 'notTaken', /no number/],
  ])('%j: %s', (reading, field, message) => {
    const problems = checkReading(reading, meter, lots, now);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ field, message: expect.stringMatching(message) });
  });

  it('has nothing to say of a reading at the limits, an expired lot, a swab after cleaning, or nothing at all', () => {
    const expired = [{ id: 'lot-1', name: '24-118', expiresOn: '2020-01-31' }];
    for (const rlu of [40, 4200, 60_000]) expect(checkReading({ rlu, lotId: 'lot-1' }, meter, expired, now)).toEqual([]);
    expect(checkReading({ beforeCleaning: false, takenAt: '2026-07-03T10:44:00+01:00' }, meter, lots, now)).toEqual([]);
    expect(checkReading({}, undefined, [])).toEqual([]);
  });

  it('reports every problem, the range only with a meter, the future only with a clock', () => {
    expect(checkReading({ rlu: -5, minutesSinceEating: -1, lotId: 'x' }, meter, lots, now).map((p) => p.field)).toEqual([
      'rlu',
      'minutesSinceEating',
      'lotId',
    ]);
    expect(checkReading({ rlu: 1e6, takenAt: '2099-01-01T00:00:00Z' }, undefined, lots)).toEqual([]);
    expect(() => checkReading({ takenAt: '2026-07-03T10:36:00Z' }, meter, lots, 'soon')).toThrow(RangeError);
  });
});
