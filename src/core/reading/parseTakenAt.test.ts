import { expect, test } from 'vitest';
import { parseTakenAt, sayDate } from './parseTakenAt.ts';

test.each([
  ['2026-07-03T10:36:00+01:00', undefined, '2026-07-03', '10:36'],
  ['2026-07-03T10:36:00+01:00', 'America/New_York', '2026-07-03', '10:36'],
  ['2026-07-03T09:36:00Z', 'Europe/London', '2026-07-03', '10:36'],
  ['2026-01-03T10:36:00.250Z', 'Europe/London', '2026-01-03', '10:36'],
  ['2026-07-03T23:30Z', 'Pacific/Auckland', '2026-07-04', '11:30'],
  ['2026-07-04T00:05:00Z', 'America/New_York', '2026-07-03', '20:05'],
  ['2026-07-04T00:05:00Z', 'UTC', '2026-07-04', '00:05'],
  ['2026-07-04T00:05:00Z', undefined, '2026-07-04', '00:05 UTC'],
])('%s in %s is %s %s', (iso, zone, localDate, localTime) => {
  expect(parseTakenAt(iso, zone)).toMatchObject({ localDate, localTime, instantMs: Date.parse(iso) });
});

test.each(['2026-07-03T10:36:00', '2026-07-03', '10:36', '2026-02-30T10:36:00Z', '2026-13-01T10:36Z', '2026-07-03T24:00Z', '', 'today'])(
  '%s is not a time with its zone',
  (iso) => expect(parseTakenAt(iso)).toBe(undefined),
);

test('an unknown zone is refused', () => expect(() => parseTakenAt('2026-07-03T09:36:00Z', 'Europe/Nowhere')).toThrow(RangeError));

test('a date in words', () => expect(sayDate('2026-03-03')).toBe('3 March 2026'));
