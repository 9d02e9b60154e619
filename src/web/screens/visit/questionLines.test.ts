import { describe, expect, test } from 'vitest';
import type { Answers, UnknownKind } from '../../../core/visit/answer.ts';
import type { Question } from '../../../core/visit/question.ts';
import { questionLines, valueText } from './questionLines.ts';

const question = (id: string, part: Partial<Question> = {}): Question => ({
  id,
  group: 'food',
  label: id,
  prompt: '',
  kind: 'yes-no',
  fills: [],
  sources: [],
  ...part,
});

const snacks = question('snacks', { kind: 'count', unit: 'a day', max: 20 });
const child = question('bottle', { belowAgeYears: 6 });

function linesOf(questions: readonly Question[], answers: Answers, unknown: [string, UnknownKind][] = [], carried: Answers = {}) {
  return questionLines({
    questions,
    group: 'food',
    ageYears: 46,
    onDate: '2026-11-25',
    answers,
    carried,
    unknown: new Map(unknown),
    couldChangeLevel: new Set(['snacks']),
    reservedLetters: '',
  });
}

describe('questionLines', () => {
  test('only questions of this group and age', () => {
    expect(linesOf([snacks, child, question('x', { group: 'home' })], {}).map((l) => l.id)).toEqual(['snacks']);
  });

  test('an absent answer is not asked, never no', () => {
    const [line] = linesOf([snacks], {}, [['snacks', 'not-asked']]);
    expect(line).toMatchObject({ text: 'not asked', tone: 'unknown', wanted: true, note: 'could change the level' });
  });

  test('out of date shows the old answer only as such', () => {
    const old: Answers = { snacks: { how: 'carried', value: 2, askedOn: '2025-12-09' } };
    const [line] = linesOf([snacks], old, [['snacks', 'out-of-date']], old);
    expect(line).toMatchObject({
      text: 'out of date',
      tone: 'unknown',
      wanted: true,
      reconfirmable: true,
      note: 'was 2 a day, December 2025; could change the level',
    });
  });

  test('carried and in date is lighter and dated', () => {
    const answers: Answers = { snacks: { how: 'carried', value: 2, askedOn: '2026-09-09' } };
    expect(linesOf([snacks], answers, [], answers)[0]).toMatchObject({
      text: '2 a day',
      tone: 'carried',
      note: 'asked September 2026',
      wanted: false,
    });
  });

  test('changed today says what it was; unchanged says so', () => {
    const carried: Answers = { snacks: { how: 'carried', value: 2, askedOn: '2025-12-09' } };
    const changed: Answers = { snacks: { how: 'asked', value: 4, askedOn: '2026-11-25' } };
    const same: Answers = { snacks: { how: 'asked', value: 2, askedOn: '2026-11-25' } };
    expect(linesOf([snacks], changed, [], carried)[0]).toMatchObject({ text: '4 a day', tone: 'new', note: 'was 2 a day, December 2025' });
    expect(linesOf([snacks], same, [], carried)[0]).toMatchObject({
      text: '2 a day',
      tone: 'confirmed',
      note: 'asked today, no change',
      reconfirmable: false,
    });
  });

  test('an optional measurement is no gap while it is not made', () => {
    const flow = question('flow', { kind: 'measure', optional: true });
    expect(linesOf([flow], {}, [['flow', 'not-asked']])[0]).toMatchObject({ tone: 'carried', wanted: false, text: 'not measured' });
    expect(linesOf([flow], { flow: { how: 'declined' } }, [['flow', 'declined']])[0]).toMatchObject({ tone: 'unknown', text: 'declined' });
  });

  test('an optional answer says its own unknown: declined, or out of date, though nothing is wanted', () => {
    const flow = question('flow', { kind: 'measure', unit: 'mL/min', optional: true, keepForMonths: 12 });
    expect(linesOf([flow], { flow: { how: 'declined' } })[0]).toMatchObject({ tone: 'unknown', text: 'declined', wanted: false });
    const old: Answers = { flow: { how: 'carried', value: 0.2, askedOn: '2025-01-01' } };
    expect(linesOf([flow], old, [], old)[0]).toMatchObject({ tone: 'unknown', text: 'out of date', wanted: false });
  });

  test('a measurement is wanted where the mouth is the reason', () => {
    const flow = question('flow', { kind: 'measure', optional: true, wantedIn: { mouths: ['lost-gland-function'], unlessKnown: [] } });
    expect(linesOf([flow], {}, [['flow', 'not-asked']])[0]).toMatchObject({ tone: 'unknown', text: 'not asked', wanted: true });
    expect(linesOf([flow], {})[0]).toMatchObject({ text: 'not measured', wanted: false });
  });

  test('a date is said to the month where the day is not known; unanswered it is not noted', () => {
    const date = question('bitewings', { kind: 'date', optional: true, choices: [{ id: 'never', label: 'never' }] });
    const textOf = (value: string) => linesOf([date], { bitewings: { how: 'asked', value, askedOn: '2026-11-25' } })[0]?.text;
    expect([textOf('2025-06'), textOf('2025-06-14'), textOf('never')]).toEqual(['June 2025', '14 June 2025', 'never']);
    expect(linesOf([date], {})[0]).toMatchObject({ text: 'not noted', wanted: false, entry: { kind: 'past-date', onDate: '2026-11-25' } });
  });

  test('declined and does-not-know are handled today but stay unknown', () => {
    const answers: Answers = { snacks: { how: 'declined', askedOn: '2026-11-25' } };
    expect(linesOf([snacks], answers, [['snacks', 'declined']])[0]).toMatchObject({ text: 'declined', tone: 'unknown', wanted: false });
  });
});

test('answers in words', () => {
  const choices = [
    { id: 'a', label: 'an antihistamine' },
    { id: 'b', label: 'a diuretic' },
  ];
  expect(valueText({ choices }, ['a', 'b'])).toBe('an antihistamine, a diuretic');
  expect(valueText({ choices }, [])).toBe('none');
  expect(valueText({ unit: 'mL/min' }, 0.18)).toBe('0.18 mL/min');
  expect(valueText({}, false)).toBe('no');
});
