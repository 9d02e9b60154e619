import fc from 'fast-check';
import { expect, test } from 'vitest';
import { birthdayIn, readBirthday } from './birthday.ts';
import { findDateOrder } from './findDateOrder.ts';

test.each([
  ['1980-03-04', '1980-03-04'],
  ['1980/3/4', '1980-03-04'],
  ['19800304', '1980-03-04'],
  ['05.05.1980', '1980-05-05'],
  ['2000-02-29', '2000-02-29'],
  ['١٩٨٠-٠٣-٠٤', '1980-03-04'],
])('%s is %s', (typed, iso) => expect(readBirthday(typed)).toEqual({ kind: 'date', iso }));

test.each(['04/03/1980', '4.3.1980', '4-3-1980', '04031980', ' 4 3 1980 '])('%s can be read in two ways, and is not guessed', (typed) => {
  const birthday = readBirthday(typed);
  expect(birthday).toEqual({ kind: 'either', dayFirst: '1980-03-04', monthFirst: '1980-04-03' });
  expect(birthdayIn(birthday, undefined)).toBeUndefined();
  expect(birthdayIn(birthday, 'day-first')).toBe('1980-03-04');
  expect(birthdayIn(birthday, 'month-first')).toBe('1980-04-03');
});

test('a day above 12 tells the order, and is no date in the other', () => {
  const birthday = readBirthday('25/12/1970');
  expect(birthday).toEqual({ kind: 'one', iso: '1970-12-25', order: 'day-first' });
  expect(birthdayIn(birthday, undefined)).toBe('1970-12-25');
  expect(birthdayIn(birthday, 'month-first')).toBeUndefined();
  expect(readBirthday('12/25/1970')).toMatchObject({ order: 'month-first' });
});

test.each([
  ['4/3/80', 'the year needs four digits'],
  ['31/02/1980', 'no such day in the calendar'],
  ['1980-13-01', 'no such day in the calendar'],
  ['2001-02-29', 'no such day in the calendar'],
  ['1812-01-01', 'the year is not between 1900 and 2099'],
  ['18120101', 'the year is not between 1900 and 2099'],
  ['04/03/2180', 'the year is not between 1900 and 2099'],
  ['', 'not a date'],
  ['yesterday', 'not a date'],
  ['0304198', 'not a date'],
])('%s: %s', (typed, why) => expect(readBirthday(typed)).toEqual({ kind: 'unreadable', why }));

const day = fc.oneof(
  fc.constantFrom(
    '1900-01-01',
    '1999-12-31',
    '2000-01-01',
    '2000-02-29',
    '2020-12-12',
    '2019-12-20',
    '1912-11-20',
    '2099-12-31',
    '1919-12-19',
  ),
  fc.date({ min: new Date('1900-01-01'), max: new Date('2099-12-31'), noInvalidDate: true }).map((d) => d.toISOString().slice(0, 10)),
);

test('a date is read back from every way of writing it, and 8 digits never mean two years', () => {
  fc.assert(
    fc.property(day, fc.constantFrom('/', '.', '-', ' ', ''), (iso, sign) => {
      const [y = '', m = '', d = ''] = iso.split('-');
      expect(readBirthday(iso)).toEqual({ kind: 'date', iso });
      expect(readBirthday(y + m + d)).toEqual({ kind: 'date', iso });
      expect(birthdayIn(readBirthday([d, m, y].join(sign)), 'day-first')).toBe(iso);
      expect(birthdayIn(readBirthday([m, d, y].join(sign)), 'month-first')).toBe(iso);
    }),
  );
});

test('a list tells its order by one clear date; without one, or with both, somebody chooses', () => {
  expect(findDateOrder(['04/03/1980', '25/12/1970'])).toMatchObject({ isNeeded: true, told: 'day-first', because: '25/12/1970' });
  expect(findDateOrder(['04/03/1980']).told).toBeUndefined();
  expect(findDateOrder(['04/03/1980', '25/12/1970', '12/25/1970']).told).toBeUndefined();
  expect(findDateOrder(['1980-03-04', '25/12/1970', '05/05/1980'])).toMatchObject({ isNeeded: false, examples: [] });
  expect(findDateOrder(['04/03/1980', '04/03/1980']).examples).toEqual([
    { text: '04/03/1980', dayFirst: '1980-03-04', monthFirst: '1980-04-03' },
  ]);
});
