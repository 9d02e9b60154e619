import { expect, test } from 'vitest';
import type { DayLine } from '../../../api/day.ts';
import { dayAfter, nameOfDay, sayReady, sayState, sayWholeDay } from './sayDay.ts';

const line = (more: Partial<DayLine> = {}): DayLine => ({
  patientId: 'p',
  name: 'Odile Brandt',
  chartNumber: null,
  birthDate: '1980-03-04',
  ageYears: 46,
  atTime: '09:40',
  appointment: { id: 'a', version: 1, note: null, reason: null },
  state: 'not-here',
  visitId: null,
  due: [],
  confirmed: null,
  waiting: [],
  outOfStock: [],
  interpreter: '',
  guardians: null,
  swab: true,
  ...more,
});
const ready = (more: Partial<DayLine>) => sayReady(line(more)).map(({ says }) => says);

test('days are counted by the calendar, over the end of a year and a leap day', () => {
  expect([dayAfter('2026-12-31', 1), dayAfter('2028-02-28', 1), dayAfter('2026-03-01', -1)]).toEqual([
    '2027-01-01',
    '2028-02-29',
    '2026-02-28',
  ]);
  expect(['2026-11-25', '2026-11-26', '2026-11-24', '2026-11-27'].map((day) => nameOfDay(day, '2026-11-25'))).toEqual([
    'Today',
    'Tomorrow',
    'Yesterday',
    undefined,
  ]);
});

test('what nobody has asked is not on record; "none needed" is not said at all', () => {
  expect(ready({})).toEqual(['swab']);
  expect(ready({ interpreter: null, swab: false })).toEqual(['not on record: interpreter']);
  expect(ready({ ageYears: 8, swab: false })).toEqual(['not on record: guardian']);
  expect(ready({ ageYears: 8, swab: false, guardians: [{ name: 'Ana', relation: 'mother', mayConsent: null }] })).toEqual([
    'guardian: mother Ana (whether to say yes to care: not asked)',
  ]);
});

test('the whole day counts only those who are still expected, but signatures for whoever was seen too', () => {
  const lines = [
    line({ patientId: 'a', waiting: ['Paste'], outOfStock: ['Gum'], interpreter: 'Arabic' }),
    line({ patientId: 'b', state: 'cancelled', waiting: ['Rinse'], outOfStock: ['Rinse'], interpreter: 'Spanish' }),
    line({ patientId: 'c', state: 'closed', waiting: ['Gel'] }),
    line({ patientId: 'd', swab: false }),
  ];
  expect(sayWholeDay({ lines, swabLots: ['Birch'] })).toBe(
    '4 people on the list: 1 seen, 1 cancelled. Swabs for up to 1, in date: Birch. For these people 2 items wait for a signature. Interpreter: Arabic at 09:40. Out of stock: Gum.',
  );
  // The same person once more in the afternoon is no other person, and no other item.
  const twice = [...lines, line({ patientId: 'c', waiting: ['Gel'], swab: false })];
  expect(sayWholeDay({ lines: twice, swabLots: ['Birch'] })).toMatch(/^4 people on the list.* For these people 2 items wait/);
  expect(sayWholeDay({ lines: [line()], swabLots: [] })).toContain('no swab lot on record is in date');
  expect(sayWholeDay({ lines: [], swabLots: [] })).toBe('Nobody is on the list of this day yet.');
});

test('the reason stands with the state', () => {
  expect(sayState(line({ state: 'missed', appointment: { id: 'a', version: 2, note: null, reason: 'ill' } }))).toBe('missed: ill');
  expect(sayState(line({ state: 'open', appointment: null }))).toBe('visit open, not planned');
});
