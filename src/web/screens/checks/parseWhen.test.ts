import { expect, test } from 'vitest';
import { parseWhen } from './parseWhen.ts';

const NOW = Date.parse('2026-11-25T10:30:00Z');
const when = (typed: string, timeZone = 'Europe/London', today = '2026-11-25') => parseWhen(typed, { today, timeZone, nowMs: NOW });

test.each([
  ['  ', undefined, 'Europe/London'],
  ['8:15', '2026-11-25T08:15:00.000Z', 'Europe/London'],
  ['0815', '2026-11-25T08:15:00.000Z', 'Europe/London'],
  ['10:35', '2026-11-25T10:35:00.000Z', 'Europe/London'],
  ['20260703 0815', '2026-07-03T07:15:00.000Z', 'Europe/London'],
  ['2026-11-24 23:59', '2026-11-25T04:59:00.000Z', 'America/New_York'],
  ['2026-11-25 1600', '2026-11-25T10:15:00.000Z', 'Asia/Kathmandu'],
  // The hour that comes twice: the first of the two.
  ['20261025 0130', '2026-10-25T00:30:00.000Z', 'Europe/London'],
])('"%s" is %s in %3$s', (typed, takenAt, zone) => expect(when(typed, zone)).toEqual({ takenAt }));

test.each([
  ['soon', /^Taken at: a time like 08:15/],
  ['25:00', /^Taken at: a time like/],
  ['20260230 0815', /^Taken at: a time like/],
  ['10:36', /^Taken at: 10:36 is still to come\.$/],
  ['20261126 0815', /^Taken at: 08:15 on 26 November 2026 is still to come\.$/],
  ['20260329 0130', /^Taken at: there was no 01:30 on 29 March 2026/],
])('"%s" is refused by name', (typed, words) => expect(when(typed)).toEqual({ problem: expect.stringMatching(words) }));
