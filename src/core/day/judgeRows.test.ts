import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DayRow, KnownAppointment, KnownPerson, RowVerdict } from './dayRow.ts';
import { type JudgeInput, judgeRows, nameKeyOf } from './judgeRows.ts';

/** Stands in for the search key of the store: enough for these names. */
const wordsOf = (text: string) =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}|['’]/gu, '')
    .match(/[\p{L}\p{N}]+/gu)
    ?.join(' ') ?? '';

const person = (id: string, name: string, birthDate: string, chartNumber?: string): KnownPerson => ({
  id,
  name,
  birthDate,
  nameKey: nameKeyOf(name, wordsOf),
  chartNumber,
  chartKey: chartNumber === undefined ? undefined : wordsOf(chartNumber),
});

const ODILE = person('p1', 'Odile Brandt', '1980-03-04', 'A-17');
const UNA = person('p2', "Una O'Neil", '1971-02-03');
const row = (fields: Partial<DayRow>, at = 1): DayRow => ({ row: at, time: '', chartNumber: '', name: '', birthday: '', ...fields });

function judge(rows: readonly DayRow[], more: Partial<JudgeInput> = {}): readonly RowVerdict[] {
  return judgeRows({ rows, dateOrder: undefined, people: [ODILE, UNA], appointments: [], today: '2026-11-25', wordsOf, ...more });
}
const one = (fields: Partial<DayRow>, more?: Partial<JudgeInput>) => judge([row(fields)], more)[0];

describe('who it is', () => {
  test.each([
    ['chart number and birthday', { chartNumber: 'a-17', birthday: '1980-03-04', name: 'Odile Brandt' }, 'p1'],
    ['chart number alone', { chartNumber: 'A 17' }, 'p1'],
    ['name and birthday, whatever the apostrophe and the order', { name: 'O’Neil, Una', birthday: '1971-02-03' }, 'p2'],
    ['chart number and birthday under a new name', { chartNumber: 'A-17', birthday: '1980-03-04', name: 'Odile Keller' }, 'p1'],
  ])('%s', (_what, fields, id) => expect(one(fields)).toMatchObject({ kind: 'known', person: { id } }));

  test('nobody on file: a new person, with the chart number', () => {
    expect(one({ name: ' سارة ', birthday: '1990-01-01', chartNumber: '9' })).toMatchObject({
      kind: 'new',
      name: 'سارة',
      birthDate: '1990-01-01',
      chartNumber: '9',
    });
  });

  test('the same name with another birthday, or none, is asked back and never decided here', () => {
    const another = { name: 'Una O’Neil', birthday: '1999-09-09' };
    expect(one(another)).toMatchObject({ kind: 'ask', choices: [{ id: 'same' }, { id: 'another' }] });
    expect(one({ ...another, choice: 'same' })).toMatchObject({ kind: 'known', person: { id: 'p2' } });
    expect(one({ ...another, choice: 'another' })).toMatchObject({ kind: 'new', birthDate: '1999-09-09' });
    expect(one({ name: 'Una ONeil' })).toMatchObject({ kind: 'ask', choices: [{ id: 'same' }] });
  });

  test('a chart number with another birthday is asked back, with another name and birthday it is wrong', () => {
    expect(one({ chartNumber: 'A-17', name: 'Odile Brandt', birthday: '1999-09-09' })).toMatchObject({
      kind: 'ask',
      choices: [{ id: 'same' }],
    });
    expect(one({ chartNumber: 'A-17', name: 'Ben Ode', birthday: '1999-09-09' })).toMatchObject({ kind: 'wrong', field: 'chartNumber' });
    expect(one({ chartNumber: 'B-1', name: 'Odile Brandt', birthday: '1980-03-04' })).toMatchObject({ kind: 'ask' });
  });

  test('a chart number that the record lacks is added to it', () => {
    expect(one({ name: "Una O'Neil", birthday: '1971-02-03', chartNumber: 'C-3' })).toMatchObject({
      kind: 'known',
      addsChartNumber: 'C-3',
    });
  });

  test('two people of one name and birthday are told apart by the chart number alone', () => {
    const twice = { people: [person('a', 'Li Na', '2000-01-01', '1'), person('b', 'Li Na', '2000-01-01', '2')] };
    expect(one({ name: 'Li Na', birthday: '2000-01-01' }, twice)).toMatchObject({ kind: 'wrong', field: 'chartNumber' });
    expect(one({ name: 'Li Na', birthday: '2000-01-01', chartNumber: '2' }, twice)).toMatchObject({ person: { id: 'b' } });
  });
});

test.each([
  [{ name: 'Ben Ode', birthday: '31/02/1980' }, 'birthday', 'row 7, birthday “31/02/1980”: no such day in the calendar'],
  [{ name: 'Ben Ode', birthday: '04/03/1980' }, 'birthday', 'row 7, birthday “04/03/1980”: which number is the day is not chosen yet'],
  [{ name: 'Ben Ode', birthday: '2026-11-26' }, 'birthday', 'row 7, birthday 2026-11-26: lies in the future'],
  [{ name: 'Ben Ode', birthday: '1905-01-01' }, 'birthday', 'row 7, birthday 1905-01-01: more than 120 years ago'],
  [{ name: 'Ben Ode' }, 'birthday', 'row 7, birthday: missing; a new person needs one'],
  [{ time: '10:99', chartNumber: 'A-17' }, 'time', 'row 7, time “10:99”: not a time of the day such as 9:40'],
  [{ birthday: '1980-03-04' }, 'name', 'row 7, name: neither a name nor a chart number'],
  [{ chartNumber: '404' }, 'chartNumber', 'row 7, chart number “404”: nobody on file has it, and the row has no name'],
  [{ name: 'x'.repeat(201), birthday: '1980-03-04' }, 'name', 'row 7, name: longer than 200 letters'],
  [{ name: 'A\u0007B', birthday: '1980-03-04' }, 'name', 'row 7, name or chart number: holds a control character'],
] as const)('%o is wrong and says where', (fields, field, says) => {
  expect(judge([row(fields, 7)])).toEqual([{ kind: 'wrong', field, says }]);
});

describe('what becomes of the time', () => {
  const nine: KnownAppointment = { id: 'a1', patientId: 'p1', atTime: '09:00', state: 'planned' };

  test('a double row says which row it doubles; another time is asked back', () => {
    const [first, double, other] = judge([
      row({ chartNumber: 'A-17', time: '9:00' }, 1),
      row({ name: 'Odile Brandt', birthday: '1980-03-04', time: '0900' }, 2),
      row({ chartNumber: 'A-17', time: '11:00' }, 3),
    ]);
    expect(first?.kind).toBe('known');
    expect(double).toEqual({ kind: 'nothing', says: 'the same as row 1' });
    expect(other).toMatchObject({ kind: 'ask', choices: [{ id: 'second' }] });
  });

  test('on the list already: nothing; at another time: moved, or a second one', () => {
    const more = { appointments: [nine] };
    expect(one({ chartNumber: 'A-17', time: '9:00' }, more)).toMatchObject({ kind: 'nothing' });
    expect(one({ chartNumber: 'A-17' }, more)).toMatchObject({ kind: 'nothing' });
    const later = { chartNumber: 'A-17', time: '10:00' };
    expect(one(later, more)).toMatchObject({ kind: 'ask', choices: [{ id: 'move' }, { id: 'second' }] });
    expect(one({ ...later, choice: 'move' }, more)).toMatchObject({ kind: 'known', moves: { id: 'a1' }, atTime: '10:00' });
    const second = one({ ...later, choice: 'second' }, more);
    expect(second).toMatchObject({ kind: 'known', atTime: '10:00' });
    expect(second).not.toHaveProperty('moves');
    expect(one({ ...later, time: '9:00' }, { appointments: [{ ...nine, state: 'cancelled' }] })).toMatchObject({
      kind: 'nothing',
      says: 'on the list already, cancelled',
    });
  });

  test('the answer to who it is outlives the question about the time', () => {
    const asked = { name: 'Odile Brandt', birthday: '1999-09-09', time: '10:00' };
    expect(one({ ...asked, choice: 'same' }, { appointments: [nine] })).toMatchObject({
      choices: [{ id: 'same-move' }, { id: 'same-second' }],
    });
    expect(one({ ...asked, choice: 'same-move' }, { appointments: [nine] })).toMatchObject({ kind: 'known', moves: { id: 'a1' } });
  });

  test('one chart number for two new people is wrong in the second row', () => {
    const [, second] = judge([
      row({ name: 'Ben Ode', birthday: '2001-01-01', chartNumber: '5' }, 1),
      row({ name: 'Ita Moss', birthday: '2002-02-02', chartNumber: '5' }, 2),
    ]);
    expect(second).toMatchObject({ kind: 'wrong', field: 'chartNumber', says: 'row 2, chart number “5”: row 1 gives it to somebody else' });
  });
});

const field = <T>(edges: readonly T[], rest: fc.Arbitrary<T>) => fc.oneof(fc.constantFrom(...edges), rest);
const anyRow = fc.record({
  time: field(['', '9:00', '10:00', '25:00'], fc.string({ maxLength: 6 })),
  chartNumber: field(['', 'A-17', 'B-2'], fc.string({ unit: 'grapheme', maxLength: 4 })),
  name: field(['', 'Odile Brandt', 'Una O’Neil', 'سارة'], fc.string({ unit: 'grapheme', maxLength: 10 })),
  birthday: field(['', '1980-03-04', '04/03/1980', '31/02/1980', '25/12/1970'], fc.string({ maxLength: 10 })),
  choice: fc.constantFrom(undefined, 'same', 'another', 'move', 'second', 'same-second', 'another-second', 'same-move'),
});

/** As the action writes it: the right rows become people and appointments. */
function takeRows(verdicts: readonly RowVerdict[], more: Pick<JudgeInput, 'people' | 'appointments'>): typeof more {
  const people = [...more.people];
  const appointments = [...more.appointments];
  for (const [index, v] of verdicts.entries()) {
    if (v.kind !== 'known' && v.kind !== 'new') continue;
    const who = v.kind === 'known' ? v.person.id : `new${index}`;
    if (v.kind === 'new') people.push(person(who, v.name, v.birthDate, v.chartNumber));
    if (v.kind === 'known' && v.addsChartNumber !== undefined) {
      const at = people.findIndex(({ id }) => id === who);
      people[at] = person(who, v.person.name, v.person.birthDate, v.addsChartNumber);
    }
    const moved = v.kind === 'known' ? appointments.findIndex(({ id }) => id === v.moves?.id) : -1;
    const put = { id: `a${index}`, patientId: who, atTime: v.atTime, state: 'planned' } as const;
    if (moved >= 0) appointments[moved] = put;
    else appointments.push(put);
  }
  return { people, appointments };
}

test('every row gets one verdict, and rows that were taken do nothing the second time', () => {
  fc.assert(
    fc.property(
      fc.array(anyRow, { maxLength: 8 }),
      fc.constantFrom(undefined, 'day-first' as const, 'month-first' as const),
      (fields, dateOrder) => {
        const rows = fields.map((f, index) => ({ ...f, row: index + 1 })) as DayRow[];
        const before = { people: [ODILE, UNA], appointments: [{ id: 'x', patientId: 'p1', atTime: '09:00', state: 'planned' } as const] };
        const first = judge(rows, { dateOrder, ...before });
        expect(first).toHaveLength(rows.length);
        const taken = rows.filter((_, index) => first[index]?.kind === 'known' || first[index]?.kind === 'new');
        const again = judge(taken, { dateOrder, ...takeRows(first, before) });
        expect(again.filter(({ kind }) => kind === 'known' || kind === 'new')).toEqual([]);
      },
    ),
    { numRuns: 600 },
  );
});
