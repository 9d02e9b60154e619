import { expect, test } from 'vitest';
import type { PersonLine } from '../../api/apiTypes.ts';
import { findPeople, parseBirthday } from './findPeople.ts';

const person = (name: string): PersonLine => ({
  id: name,
  name,
  birthDate: '1980-01-01',
  ageYears: 46,
  lastVisitOn: null,
  lastLevel: null,
  openVisitId: null,
  nextOn: null,
  due: '',
  waiting: 0,
});
const people = ['Odile Brandt', 'José Ruiz-Oda', 'Bran Odell'].map(person);
const found = (typed: string) => findPeople(people, typed).map((p) => p.name);

test('by the beginning of any word, in any order, accents and case aside', () => {
  expect(found('')).toHaveLength(3);
  expect(found('od')).toEqual(['Odile Brandt', 'José Ruiz-Oda', 'Bran Odell']);
  expect(found('bran od')).toEqual(['Odile Brandt', 'Bran Odell']);
  expect(found('JOSE')).toEqual(['José Ruiz-Oda']);
  expect(found('dile')).toEqual([]);
});

test('an apostrophe of either kind is none', () => {
  const both = ["Una O'Neil", 'Ita O’Neil', 'Bo Oneida'].map(person);
  for (const typed of ["o'neil", 'O’Neil', 'oneil'])
    expect(findPeople(both, typed).map((p) => p.name)).toEqual(["Una O'Neil", 'Ita O’Neil']);
});

test.each([
  ['20190307', '2019-03-07'],
  ['2019 03 07', '2019-03-07'],
  ['2019-03-07', '2019-03-07'],
  ['20190230', undefined],
  ['07032019', undefined],
  ['2019-3-7', undefined],
  ['', undefined],
])('birthday %s', (typed, iso) => {
  expect(parseBirthday(typed)).toBe(iso);
});
