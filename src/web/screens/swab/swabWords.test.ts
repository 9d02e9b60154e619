import { describe, expect, test } from 'vitest';
import { swabConditions } from '../../../content/swabConditions.ts';
import type { PastReading, SwabReading } from '../../../core/reading/types.ts';
import { formatClock } from '../../format.ts';
import { beginFlow, type SwabSetting } from './swabFlow.ts';
import { sayChoice, sayCountDown, sayStep } from './swabWords.ts';

const setting: SwabSetting = {
  meters: [],
  lots: [
    { id: 'old', name: 'Alder', expiresOn: '2026-07-02' },
    { id: 'soon', name: 'Birch', expiresOn: '2026-07-03' },
  ],
  members: [],
  pastReadings: [],
  conditions: swabConditions,
  onDate: '2026-07-03',
  timeZone: 'Europe/London',
  mouth: null,
};
const NOW = '2026-07-03T12:00:00Z';
const textOf = (...[step, reading, over]: [Parameters<typeof sayStep>[0], SwabReading, Partial<SwabSetting>?]) =>
  sayStep(step, beginFlow(reading, undefined), { ...setting, ...over }, NOW).text.join(' ');

describe('when the last swab was', () => {
  const at = (takenAt: string): PastReading => ({ takenAt, rlu: 900, bound: 'exact', state: 'valid', meterId: 'a' });

  test('and when the next may be, in the zone of the practice', () => {
    expect(textOf('too-soon', {}, { pastReadings: [at('2026-03-01T09:00:00Z'), at('2026-07-02T22:30:00Z')] })).toBe(
      'The last swab was on 2 July 2026 at 23:30. At most one in 24 hours: not before 3 July 2026 at 23:30. The visit is complete without a reading.',
    );
  });

  test('a swab for a study counts as any other', () => {
    const said = textOf('too-soon', {}, { pastReadings: [at('2026-03-01T09:00:00Z')], studySwabs: [{ takenAt: '2026-07-02T22:30:00Z' }] });
    expect(said).toMatch(/^The last swab was on 2 July 2026 at 23:30\./);
  });

  test('one still to come is a wrong clock, not a time to wait for', () => {
    const said = textOf('too-soon', {}, { pastReadings: [at('2026-07-03T14:00:00Z')] });
    expect(said).toContain('for 3 July 2026 at 15:00, which is still to come: look at the clock');
    expect(said).not.toContain('not before');
  });
});

test.each([
  [{ lotId: 'soon' }, {}, 'From lot Birch, in date until 3 July 2026. Look at the pack.'],
  [{ lotId: 'old' }, {}, 'Lot Alder was past its date, 2 July 2026: take another pack.'],
  [{}, {}, 'Choose the pack that is open.'],
  [{}, { lots: [] }, 'No pack in date is on record. A new one is entered under Rules, Practice.'],
] as const)('the pack %j %j', (reading, over, said) => expect(textOf('taken-by', reading, over)).toBe(said));

describe('time from activation to reading', () => {
  const activatedAt = '2026-07-03T10:35:22Z';
  const takenAt = '2026-07-03T10:36:00Z';
  test.each([
    [{ activatedAt, takenAt }, `Activated at ${formatClock(activatedAt)}, read at ${formatClock(takenAt)}: 38 seconds.`],
    [{ activatedAt: takenAt, takenAt: activatedAt }, 'Time from activation to reading not known: the clock was set back.'],
    [{ takenAt }, 'The time of activation was not noted.'],
  ])('%j', (reading, said) => expect(textOf('read', reading)).toBe(said));
});

test('a failed swab is not repeated, and nothing is asked for', () => {
  expect(textOf('failed', { failed: true })).toBe(
    'A failed swab is not repeated: the next swab is for the next planned visit, 24 hours or more from now. The visit is complete without a reading.',
  );
  expect(textOf('not-taken', { notTaken: 'other', notTakenNote: 'fell asleep' })).toBe(
    'Because: another reason, fell asleep. The visit is complete without a reading.',
  );
});

test.each([
  ['start', 25, ''],
  ['count-down', 25, 'Count-down started: 25 seconds.'],
  ['count-down', 11, 'Count-down started: 25 seconds.'],
  ['count-down', 10, '10 seconds left.'],
  ['count-down', 1, '10 seconds left.'],
  ['number', 0, 'Done. Type the number on the meter.'],
  ['read', 0, ''],
] as const)('the status line at %s with %s s left', (step, left, said) => expect(sayCountDown(step, left, 25)).toBe(said));

test('a meter of ten seconds or less speaks at start and end only', () => {
  expect(sayCountDown('count-down', 10, 10)).toBe('Count-down started: 10 seconds.');
});

test('keys say what is true: not trained, past its date, more and less', () => {
  expect(sayChoice({ kind: 'member', name: 'Ines', trained: false }, setting)).toBe('Ines, not trained yet');
  expect(sayChoice({ kind: 'lot', lotId: 'old' }, setting)).toBe('Lot Alder, past its date');
  const minutes = (m: number | undefined) => sayChoice({ kind: 'minutes', field: 'minutesSinceEating', minutes: m }, setting);
  expect([60, 45, 5, undefined].map(minutes)).toEqual(['60 minutes or more', 'About 45 minutes', '5 minutes or less', 'Not known']);
});
