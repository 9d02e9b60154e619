import { expect, test } from 'vitest';
import { namedRhythms, rhythmKept, usualRhythms } from '../../content/dayRhythms.ts';
import { rhythmOfVisit } from './rhythmOfVisit.ts';

const tables = { usual: usualRhythms, named: namedRhythms, rhythmKept };
const pastRhythm = { rhythm: 'night', askedOn: '2026-03-04' } as const;
const on = (onDate: string, more = {}) => {
  const { basis, rhythm, askedOn } = rhythmOfVisit({ onDate, pastRhythm, ...more }, 40, tables);
  return [basis, rhythm, askedOn];
};

test('a rhythm of an earlier visit holds to the last day of its keep-for time; after that a usual day is assumed, and said to be', () => {
  expect(on('2026-09-04')).toEqual(['named', 'night', '2026-03-04']);
  expect(on('2026-09-05')).toEqual(['usual', 'home', '2026-03-04']);
  expect(on('2026-09-05', { pastRhythm: undefined })).toEqual(['usual', 'home', undefined]);
});

test('what is said today leads, however new what was carried is', () => {
  expect(on('2026-03-05', { agreed: { rhythm: 'home' } })).toEqual(['named', 'home', undefined]);
  expect(on('2027-03-05', { agreed: { rhythm: 'night' } })).toEqual(['named', 'night', undefined]);
});
