import { expect, test } from 'vitest';
import type { Answer } from '../visit/answer.ts';
import type { Question } from '../visit/question.ts';
import { knownAnswers } from './knownAnswers.ts';

const question = (over: Partial<Question>): Question => ({
  id: 'q',
  group: 'home',
  label: 'q',
  prompt: 'q',
  kind: 'yes-no',
  fills: [],
  sources: [],
  ...over,
});

function kindOf(answer: Answer | undefined, over: Partial<Question>, onDate = '2026-11-25', ageYears = 40): string | undefined {
  const { known, unknown } = knownAnswers({ answers: answer ? { q: answer } : {}, questions: [question(over)], ageYears, onDate });
  expect(Object.keys(known).length + unknown.length).toBeLessThanOrEqual(1);
  return Object.keys(known).length === 1 ? 'known' : unknown[0]?.kind;
}
const carried = (askedOn: string | undefined): Answer => ({ how: 'carried', value: true, askedOn });

test('the four kinds of unknown are kept apart', () => {
  expect(kindOf(undefined, {})).toBe('not-asked');
  expect(kindOf({ how: 'not-asked' }, {})).toBe('not-asked');
  expect(kindOf({ how: 'declined' }, {})).toBe('declined');
  expect(kindOf({ how: 'does-not-know' }, {})).toBe('does-not-know');
  expect(kindOf(carried('2020-01-01'), { keepForMonths: 6 })).toBe('out-of-date');
  expect(kindOf({ how: 'asked', value: false, askedOn: '2026-11-25' }, { keepForMonths: 0 })).toBe('known');
  expect(kindOf({ how: 'asked' }, {})).toBe('not-asked');
});

test.each([
  ['2026-05-25', 6, '2026-11-25', 'known'], // the last day still counts
  ['2026-05-24', 6, '2026-11-25', 'out-of-date'],
  ['2026-11-25', 0, '2026-11-25', 'known'],
  ['2026-11-24', 0, '2026-11-25', 'out-of-date'],
  ['2026-08-31', 6, '2027-02-28', 'known'], // a shorter month ends on its own last day
  ['2026-08-31', 6, '2027-03-01', 'out-of-date'],
  ['2024-02-29', 24, '2026-02-28', 'known'],
  ['2024-02-29', 24, '2026-03-01', 'out-of-date'],
  ['2026-03-28', 1, '2026-04-28', 'known'], // across the change to summer time
  ['2026-11-26', 6, '2026-11-25', 'out-of-date'], // asked after the visit: not to be trusted
  [undefined, 6, '2026-11-25', 'out-of-date'],
  [undefined, undefined, '2026-11-25', 'known'],
  ['1990-01-01', undefined, '2026-11-25', 'known'],
])('asked on %s, kept %s months, visit on %s: %s', (askedOn, keepForMonths, onDate, kind) => {
  expect(kindOf(carried(askedOn), { keepForMonths }, onDate)).toBe(kind);
});

test('questions for other ages and optional ones are not missing; an optional answer counts', () => {
  expect(kindOf(undefined, { fromAgeYears: 41 })).toBe(undefined);
  expect(kindOf({ how: 'asked', value: true }, { belowAgeYears: 40 })).toBe(undefined);
  expect(kindOf({ how: 'asked', value: true }, { fromAgeYears: 40 })).toBe('known');
  expect(kindOf(undefined, { optional: true })).toBe(undefined);
  expect(kindOf({ how: 'asked', value: true }, { optional: true })).toBe('known');
});
