import { expect, test } from 'vitest';
import { demoPractice } from '../content/demo/practice.ts';
import { readVisit } from './readVisit.ts';

const fileOf = (practice: unknown) => ({
  ebbline: 'visit-1',
  practice: JSON.parse(JSON.stringify(practice)) as unknown,
  person: { name: 'Somebody Invented', birthDate: '1980-01-02', newPatient: false },
  visit: { onDate: '2026-11-25', language: 'en', answers: {}, findings: [], pastReadings: [], signed: [] },
});

test('a practice that was read before is read the same again, and another one is not taken for it', () => {
  const first = readVisit(fileOf(demoPractice));
  const renamed = readVisit(fileOf({ ...demoPractice, name: 'Another Invented Practice' }));
  const again = readVisit(fileOf(demoPractice));
  expect(again).toEqual(first);
  expect(again.practice).toBe(first.practice);
  expect(renamed.practice.name).toBe('Another Invented Practice');
});

test('a wrong practice is named on every line, and so is a wrong visit beside a practice that was read before', () => {
  const wrong = fileOf({ ...demoPractice, timeZone: 7 });
  for (let line = 0; line < 2; line += 1) expect(() => readVisit(wrong)).toThrow('must be text');
  const good = fileOf(demoPractice);
  readVisit(good);
  expect(() => readVisit({ ...good, visit: { ...good.visit, onDate: 'today' } })).toThrow('must be a date');
  const twice = { ...demoPractice, lots: [...demoPractice.lots, ...demoPractice.lots] };
  for (let line = 0; line < 2; line += 1) expect(() => readVisit(fileOf(twice))).toThrow('stands there twice');
});

test.each([null, 7, [], {}, { practice: null }, { practice: [] }])('%j is no visit', (value) => {
  expect(() => readVisit(value)).toThrow();
});
