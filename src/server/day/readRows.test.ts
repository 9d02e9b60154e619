import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRows } from './readRows.ts';

const ODILE = { time: '9:40', chartNumber: '1042', name: 'Odile Brandt', birthday: '1980-03-04' };
const FIELDS = ['time', 'chartNumber', 'name', 'birthday'] as const;
const HEADS = { time: 'Time', chartNumber: 'Chart number', name: 'Patient name', birthday: 'Date of birth' };

test('columns in any order, with or without a header, with any of the three separators', () => {
  const orders = fc.shuffledSubarray([...FIELDS], { minLength: 4 });
  fc.assert(
    fc.property(orders, fc.constantFrom(',', ';', '\t'), fc.boolean(), (order, sign, hasHeader) => {
      const lines = [order.map((f) => HEADS[f]), order.map((f) => ODILE[f]), order.map((f) => ({ ...ODILE, name: 'Una O’Neil' })[f])];
      const list = readRows((hasHeader ? lines : lines.slice(1)).map((cells) => cells.join(sign)).join('\n'));
      expect([list.hasHeader, list.columns]).toEqual([hasHeader, order]);
      expect(list.rows[0]).toEqual({ row: hasHeader ? 2 : 1, ...ODILE });
      expect(list.rows).toHaveLength(2);
    }),
  );
});

test('a comma inside a name stays where semicolons separate, or where the name is quoted', () => {
  expect(readRows('9:40;Brandt, Odile;1980-03-04').rows[0]).toMatchObject({ name: 'Brandt, Odile' });
  expect(readRows('9:40,"Brandt, Odile",1980-03-04\r\n10:00,"O\'Neil, ""Una""",1971-02-03').rows[1]).toMatchObject({
    name: 'O\'Neil, "Una"',
  });
});

test('one quotation mark that stands alone costs its own line and no other', () => {
  const { rows } = readRows('9:00,1,Ana Ode,1990-01-01\n9:20,2,O"Neil,1971-02-03\n9:40,3,"Ben,1992-02-02\n10:00,4,Ita Moss,2001-01-01');
  expect(rows.map(({ row, name, problem }) => [row, name, problem !== undefined])).toEqual([
    [1, 'Ana Ode', false],
    [2, '9:20,2,O"Neil,1971-02-03', true],
    [3, '9:40,3,"Ben,1992-02-02', true],
    [4, 'Ita Moss', false],
  ]);
});

test('a row with more cells than the list is kept and named; a short one lacks fields', () => {
  const { rows } = readRows('time,name,birthday\n9:00,Ana Ode,1990-01-01\n9:20,Ode,Ben,1991-01-01\n10:00,Ita Moss');
  expect(rows[1]?.problem).toBe('4 columns where the list has 3: 9:20 | Ode | Ben | 1991-01-01');
  expect(rows[2]).toEqual({ row: 4, time: '10:00', chartNumber: '', name: 'Ita Moss', birthday: '' });
});

test('numbers of four digits beside times with a colon are chart numbers; alone they are times, until somebody says otherwise', () => {
  expect(readRows('1001,9:00,Ana Ode,1990-01-01\n1015,9:20,Ben Ode,1991-01-01').columns).toEqual([
    'chartNumber',
    'time',
    'name',
    'birthday',
  ]);
  const text = '1001,Ana Ode,1990-01-01\n1015,Ben Ode,1991-01-01';
  expect(readRows(text).columns).toEqual(['time', 'name', 'birthday']);
  expect(readRows(text, ['chartNumber', 'name', 'birthday']).rows[0]).toMatchObject({ time: '', chartNumber: '1001' });
});

test('what no column is for is not used, and the header says so', () => {
  const list = readRows('Time,Phone,Name,Born\n9:00,555,Ana Ode,1990-01-01');
  expect([list.columns, list.examples]).toEqual([
    ['time', 'not-used', 'name', 'birthday'],
    ['Time', 'Phone', 'Name', 'Born'],
  ]);
});

test('marks of direction, the mark of a file and hard spaces do not make names differ', () => {
  expect(readRows('\ufefftime,name,birthday\n9:00,\u202bسارة\u00a0الحداد\u202c,1990-01-01').rows[0]).toMatchObject({ name: 'سارة الحداد' });
});

test('whatever is pasted, every line with something in it is a row or the header, and nothing throws', () => {
  const piece = fc.oneof(
    fc.constantFrom(',', ';', '\t', '"', '\n', '\r\n', "'", '9:40', '1980-03-04', 'Odile'),
    fc.string({ unit: 'grapheme', maxLength: 5 }),
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
      const text = pieces.join('');
      const { rows, columns, hasHeader } = readRows(text);
      expect(new Set(columns.filter((c) => c !== 'not-used')).size).toBe(columns.filter((c) => c !== 'not-used').length);
      expect(rows.length + (hasHeader ? 1 : 0) > 0 || !/\p{L}/u.test(text)).toBe(true);
    }),
    { numRuns: 500 },
  );
});
