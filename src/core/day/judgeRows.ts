import { birthdayIn, type DateOrder, readBirthday } from './birthday.ts';
import { readClockTime } from './clockTime.ts';
import type { DayRow, KnownAppointment, KnownPerson, RowChoice, RowField, RowVerdict } from './dayRow.ts';

export interface JudgeInput {
  readonly rows: readonly DayRow[];
  /** Which number of a birthday like 04/03/1980 is the day; absent = not chosen. */
  readonly dateOrder: DateOrder | undefined;
  readonly people: readonly KnownPerson[];
  readonly appointments: readonly KnownAppointment[];
  /** Nobody is born after it. ISO local date. */
  readonly today: string;
  /** Accent-free lower-case words. */
  readonly wordsOf: (text: string) => string;
}

/** Nobody is older. */
const MOST_YEARS = 120;
const LONGEST_NAME = 200;
const LONGEST_CHART = 50;

/** Words of a name in the order of the alphabet. */
export const nameKeyOf = (name: string, wordsOf: JudgeInput['wordsOf']): string => wordsOf(name).split(' ').sort().join(' ');

/** What every row will do, in the order of the rows. The same rows judged again after they were taken do nothing. */
export function judgeRows(input: JudgeInput): readonly RowVerdict[] {
  const file = indexPeople(input.people);
  const before: Taken[] = [];
  return input.rows.map((row) => {
    const verdict = judgeRow(row, input, file, before);
    const chartKey = input.wordsOf(row.chartNumber) || undefined;
    if (verdict.kind === 'known') before.push({ row: row.row, who: verdict.person.id, atTime: verdict.atTime, chartKey });
    if (verdict.kind === 'new') before.push({ row: row.row, who: newKey(verdict, input.wordsOf), atTime: verdict.atTime, chartKey });
    return verdict;
  });
}

/** Somebody whom an earlier row puts down. */
interface Taken {
  readonly row: number;
  /** Id of a person on file, or the name and birthday of a new one. */
  readonly who: string;
  readonly atTime: string | null;
  readonly chartKey: string | undefined;
}

interface PeopleOnFile {
  readonly byChart: ReadonlyMap<string, KnownPerson>;
  readonly byName: ReadonlyMap<string, readonly KnownPerson[]>;
}

function indexPeople(people: readonly KnownPerson[]): PeopleOnFile {
  const byChart = new Map<string, KnownPerson>();
  const byName = new Map<string, KnownPerson[]>();
  for (const person of people) {
    if (person.chartKey !== undefined && person.chartKey !== '') byChart.set(person.chartKey, person);
    byName.set(person.nameKey, [...(byName.get(person.nameKey) ?? []), person]);
  }
  return { byChart, byName };
}

const newKey = ({ name, birthDate }: { readonly name: string; readonly birthDate: string }, wordsOf: JudgeInput['wordsOf']): string =>
  `${nameKeyOf(name, wordsOf)} ${birthDate}`;

/** A row whose fields could be read. */
interface ReadRow {
  readonly row: DayRow;
  readonly atTime: string | null;
  readonly chartKey: string | undefined;
  readonly nameKey: string;
  /** Absent = the row gives none. */
  readonly birthDate: string | undefined;
}

function judgeRow(row: DayRow, input: JudgeInput, file: PeopleOnFile, before: readonly Taken[]): RowVerdict {
  if (row.leftOut) return { kind: 'left-out', says: 'left out' };
  if (row.problem !== undefined) return { kind: 'wrong', field: 'row', says: `row ${row.row}: ${row.problem}` };
  const read = readRow(row, input);
  if ('kind' in read) return read;
  const who = identify(read, file, input);
  if ('kind' in who) return who;
  return place(read, who, input, before);
}

const wrong = ({ row }: DayRow, field: RowField, says: string): RowVerdict => ({ kind: 'wrong', field, says: `row ${row}, ${says}` });

function readRow(row: DayRow, { dateOrder, today, wordsOf }: JudgeInput): ReadRow | RowVerdict {
  const atTime = row.time.trim() === '' ? null : readClockTime(row.time);
  if (atTime === undefined) return wrong(row, 'time', `time “${row.time}”: not a time of the day such as 9:40`);
  if (row.name.trim().length > LONGEST_NAME) return wrong(row, 'name', `name: longer than ${LONGEST_NAME} letters`);
  if (row.chartNumber.trim().length > LONGEST_CHART) return wrong(row, 'chartNumber', `chart number: longer than ${LONGEST_CHART} letters`);
  if (/\p{Cc}/u.test(row.name.trim() + row.chartNumber.trim()))
    return wrong(row, 'name', 'name or chart number: holds a control character');
  const chartKey = wordsOf(row.chartNumber) || undefined;
  const nameKey = nameKeyOf(row.name, wordsOf);
  if (chartKey === undefined && nameKey === '') return wrong(row, 'name', 'name: neither a name nor a chart number');
  if (row.birthday.trim() === '') return { row, atTime, chartKey, nameKey, birthDate: undefined };
  const birthday = readBirthday(row.birthday);
  if (birthday.kind === 'unreadable') return wrong(row, 'birthday', `birthday “${row.birthday}”: ${birthday.why}`);
  const birthDate = birthdayIn(birthday, dateOrder);
  if (birthDate === undefined) return wrong(row, 'birthday', `birthday “${row.birthday}”: ${whyNotRead(dateOrder)}`);
  if (birthDate > today) return wrong(row, 'birthday', `birthday ${birthDate}: lies in the future`);
  if (Number(birthDate.slice(0, 4)) < Number(today.slice(0, 4)) - MOST_YEARS)
    return wrong(row, 'birthday', `birthday ${birthDate}: more than ${MOST_YEARS} years ago`);
  return { row, atTime, chartKey, nameKey, birthDate };
}

function whyNotRead(order: DateOrder | undefined): string {
  if (order === undefined) return 'which number is the day is not chosen yet';
  return `no such day when the ${order === 'day-first' ? 'day' : 'month'} stands first`;
}

/** Somebody on file, or a new person. */
type Who = { readonly person: KnownPerson } | { readonly birthDate: string };

function identify(read: ReadRow, file: PeopleOnFile, { wordsOf }: JudgeInput): Who | RowVerdict {
  const { row, chartKey, nameKey, birthDate } = read;
  const byChart = chartKey === undefined ? undefined : file.byChart.get(chartKey);
  if (byChart) return identifyByChart(read, byChart);
  // Without a chart number that is on file there must be a name.
  if (nameKey === '') return wrong(row, 'chartNumber', `chart number “${row.chartNumber}”: nobody on file has it, and the row has no name`);
  const named = file.byName.get(nameKey) ?? [];
  const same = birthDate === undefined ? [] : named.filter((person) => person.birthDate === birthDate);
  if (same.length > 1)
    return wrong(row, 'chartNumber', `name: ${same.length} people on file have this name and birthday; give the chart number`);
  const [only] = same;
  if (only) return isOtherChart(only, chartKey) ? askWhether(read, only, otherChartWords(only)) : { person: only };
  if (named.length > 1 && birthDate === undefined)
    return wrong(row, 'birthday', `birthday: missing, and ${named.length} people on file have this name`);
  const [namesake] = named;
  if (namesake) return askWhether(read, namesake, birthDate === undefined ? 'no birthday in this row' : 'another birthday');
  if (birthDate === undefined) return wrong(row, 'birthday', 'birthday: missing; a new person needs one');
  if (wordsOf(row.name) === '') return wrong(row, 'name', 'name: no letters in it');
  return { birthDate };
}

/** The chart number says who it is; name and birthday must not say otherwise. */
function identifyByChart(read: ReadRow, person: KnownPerson): Who | RowVerdict {
  const { birthDate, nameKey } = read;
  const otherBirthday = birthDate !== undefined && birthDate !== person.birthDate;
  const otherName = nameKey !== '' && nameKey !== person.nameKey;
  if (otherBirthday && otherName)
    return wrong(read.row, 'chartNumber', `chart number “${read.row.chartNumber}”: on file it is that of ${sayPerson(person)}`);
  if (otherBirthday) return askWhether(read, person, 'the chart number is the same, the birthday is another', false);
  if (otherName && birthDate === undefined) return askWhether(read, person, 'the chart number is the same, the name is another', false);
  return { person };
}

const isOtherChart = (person: KnownPerson, chartKey: string | undefined): boolean =>
  chartKey !== undefined && person.chartKey !== undefined && person.chartKey !== chartKey;

const otherChartWords = ({ chartNumber }: KnownPerson) => `same birthday, but chart number ${chartNumber} on file`;

const sayPerson = ({ name, birthDate }: KnownPerson): string => `${name}, born ${birthDate}`;

const SAME: readonly RowChoice[] = ['same', 'same-move', 'same-second'];
const ANOTHER: readonly RowChoice[] = ['another', 'another-second'];

/** The same name is no proof, so it is asked back. */
function askWhether(read: ReadRow, person: KnownPerson, why: string, mayBeAnother = true): Who | RowVerdict {
  const { choice } = read.row;
  if (choice && SAME.includes(choice)) return { person };
  if (choice && ANOTHER.includes(choice) && mayBeAnother && read.birthDate !== undefined) return { birthDate: read.birthDate };
  const isSame = { id: 'same', label: `the same person: ${sayPerson(person)}` } as const;
  const isAnother = { id: 'another', label: 'another person: add a new one' } as const;
  const choices = mayBeAnother && read.birthDate !== undefined ? [isSame, isAnother] : [isSame];
  return { kind: 'ask', says: `row ${read.row.row}: ${sayPerson(person)} is on file; ${why}. Is this the same person?`, choices };
}

/** Where the person is known, what becomes of the time. */
function place(read: ReadRow, who: Who, input: JudgeInput, before: readonly Taken[]): RowVerdict {
  const { row, atTime } = read;
  const id = 'person' in who ? who.person.id : newKey({ name: row.name, birthDate: who.birthDate }, input.wordsOf);
  const clash = before.find((taken) => taken.chartKey !== undefined && taken.chartKey === read.chartKey && taken.who !== id);
  if (clash) return wrong(row, 'chartNumber', `chart number “${row.chartNumber}”: row ${clash.row} gives it to somebody else`);
  const elsewhere = before.find((taken) => taken.who === id && isTwoCharts(taken.chartKey, read.chartKey));
  if (elsewhere)
    return wrong(row, 'chartNumber', `chart number “${row.chartNumber}”: row ${elsewhere.row} gives the same person another one`);
  const twin = before.find((taken) => taken.who === id && (taken.atTime === atTime || atTime === null));
  if (twin) return { kind: 'nothing', says: `the same as row ${twin.row}` };
  const there = 'person' in who ? input.appointments.filter(({ patientId }) => patientId === who.person.id) : [];
  const standing = there.find((a) => a.atTime === atTime) ?? (atTime === null ? there[0] : undefined);
  if (standing)
    return { kind: 'nothing', says: standing.state === 'planned' ? 'on the list already' : `on the list already, ${standing.state}` };
  const earlier = before.find((taken) => taken.who === id);
  const other = there.find(({ state }) => state === 'planned');
  const means = placeChoice(row.choice);
  if ((earlier || other) && means === undefined) return askTime(read, earlier, other);
  return put(read, who, means === 'move' && !earlier ? other : undefined);
}

const isTwoCharts = (a: string | undefined, b: string | undefined): boolean => a !== undefined && b !== undefined && a !== b;

function placeChoice(choice: RowChoice | undefined): 'move' | 'second' | undefined {
  if (choice === 'move' || choice === 'same-move') return 'move';
  return choice === 'second' || choice === 'same-second' || choice === 'another-second' ? 'second' : undefined;
}

function askTime({ row, atTime }: ReadRow, earlier: Taken | undefined, other: KnownAppointment | undefined): RowVerdict {
  // The answer to the first question must not be lost over the second one.
  const answered = row.choice === 'same' || row.choice === 'another' ? row.choice : undefined;
  const second = { id: answered ? (`${answered}-second` as const) : 'second', label: 'a second appointment' } as const;
  if (earlier) {
    const says = `row ${row.row}: row ${earlier.row} puts the same person down ${sayTime(earlier.atTime)}. Twice this day?`;
    return { kind: 'ask', says, choices: [second] };
  }
  const move = { id: answered === 'same' ? 'same-move' : 'move', label: `moved to ${atTime}` } as const;
  const says = `row ${row.row}: on the list already ${sayTime(other?.atTime ?? null)}. Moved, or a second appointment?`;
  return { kind: 'ask', says, choices: [move, second] };
}

const sayTime = (atTime: string | null): string => (atTime === null ? 'without a time' : `at ${atTime}`);

function put({ row, atTime, nameKey }: ReadRow, who: Who, moves: KnownAppointment | undefined): RowVerdict {
  const chartNumber = row.chartNumber.trim() || undefined;
  if (!('person' in who)) {
    return { kind: 'new', name: row.name.trim(), birthDate: who.birthDate, chartNumber, atTime, says: `new person, born ${who.birthDate}` };
  }
  const { person } = who;
  const addsChartNumber = person.chartNumber === undefined ? chartNumber : undefined;
  const notes = [
    nameKey !== '' && nameKey !== person.nameKey && `on file as ${person.name}`,
    addsChartNumber !== undefined && 'the chart number is added to the record',
    moves && `moved from ${moves.atTime ?? 'no time'}`,
  ].filter(Boolean);
  const says = ['on file', ...notes].join('; ');
  return { kind: 'known', person, atTime, ...(moves ? { moves } : {}), ...(addsChartNumber ? { addsChartNumber } : {}), says };
}
