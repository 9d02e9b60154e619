import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { sayDuration, secondsToReading } from './secondsToReading.ts';

test.each([
  ['2026-07-03T10:35:22+01:00', '2026-07-03T10:36:00+01:00', 38],
  ['2026-07-03T10:35:22+01:00', '2026-07-03T09:36:00Z', 38],
  ['2026-07-03T10:36:00.600Z', '2026-07-03T10:36:25.500Z', 24],
  ['2026-07-03T10:36:00Z', '2026-07-03T10:36:00Z', 0],
  ['2026-07-03T10:36:00.001Z', '2026-07-03T10:36:00Z', undefined],
  ['2026-07-03T10:36:00', '2026-07-03T10:36:10Z', undefined],
  [undefined, '2026-07-03T10:36:10Z', undefined],
  ['2026-07-03T10:36:00Z', undefined, undefined],
])('%s to %s: %s', (activatedAt, takenAt, seconds) => {
  expect(secondsToReading({ activatedAt, takenAt })).toBe(seconds);
});

it('is never negative, whichever clock was changed', () => {
  const base = Date.parse('2026-07-03T10:36:00Z');
  const edgy = fc.oneof(fc.constantFrom(-1, 0, 1, 999, 1000), fc.integer({ min: -90_000_000, max: 90_000_000 }));
  fc.assert(
    fc.property(edgy, (ms) => {
      const seconds = secondsToReading({ activatedAt: new Date(base).toISOString(), takenAt: new Date(base + ms).toISOString() });
      expect(seconds).toBe(ms < 0 ? undefined : Math.floor(ms / 1000));
    }),
  );
});

test.each([
  [0, '0 seconds'],
  [1, '1 second'],
  [119, '119 seconds'],
  [120, '2 minutes'],
  [7199, '119 minutes'],
  [7200, '2 hours'],
])('%s s is said as %s', (seconds, said) => expect(sayDuration(seconds)).toBe(said));
