import { expect, test } from 'vitest';
import type { DaySheet } from '../../../api/day.ts';
import { questions } from '../../content.ts';
import { reservedLettersOf } from '../visit/buildLines.ts';
import { questionLines } from '../visit/questionLines.ts';
import { SHEET_GROUPS, sheetLines } from './sheetLines.ts';

const sheet = (more: Partial<DaySheet> = {}): DaySheet => ({
  patientId: 'p',
  name: 'Odile Brandt',
  birthDate: '1980-03-04',
  ageYears: 46,
  atTime: null,
  language: null,
  interpreter: null,
  onDate: '2026-11-26',
  answers: {},
  unknown: questions.map(({ id }) => ({ question: id, kind: 'not-asked' })),
  notAsked: [],
  ...more,
});

test.each([1, 4, 6, 10, 17, 46, 80])(
  'at %i years: the questions of that age, with the letters and in the order of the Visit page',
  (ageYears) => {
    const base = { questions, ageYears, onDate: '2026-11-26', answers: {}, carried: {}, couldChangeLevel: new Set<string>() };
    const unknown = new Map(questions.map(({ id }) => [id, 'not-asked' as const]));
    const onPage = SHEET_GROUPS.flatMap((group) => questionLines({ ...base, group, unknown, reservedLetters: reservedLettersOf(group) }));
    const keys = onPage.filter((line) => line.wanted).map(({ id, letter }) => [id, letter]);
    expect(sheetLines(sheet({ ageYears }), questions).map(({ id, letter }) => [id, letter])).toEqual(keys);
  },
);

test('a private question has neither words nor last time, even if an answer were there', () => {
  const answers = Object.fromEntries(questions.map(({ id }) => [id, { how: 'carried', value: true, askedOn: '2026-03-04' } as const]));
  const lines = sheetLines(sheet({ answers, unknown: questions.map(({ id }) => ({ question: id, kind: 'out-of-date' })) }), questions);
  const isPrivate = new Set(questions.filter((q) => q.private).map(({ id }) => id));
  const mine = lines.filter(({ id }) => isPrivate.has(id));
  expect(mine.length).toBeGreaterThan(0);
  for (const line of mine) expect([line.ask, line.lastTime]).toEqual([null, undefined]);
  const mixed = questions.filter((q) => !q.private && q.choices?.some((choice) => choice.private));
  expect(mixed.length).toBeGreaterThan(0);
  for (const { id, choices = [] } of mixed) {
    const line = lines.find((l) => l.id === id);
    expect(line?.lastTime).toBeUndefined();
    const hidden = choices.filter((choice) => choice.private).map((choice) => choice.label);
    for (const label of hidden) expect(JSON.stringify(line ?? '')).not.toContain(label);
  }
  expect(lines.find(({ id }) => id === 'can_spit' || id === 'sugars_at_meals')).toMatchObject({ lastTime: 'yes, March 2026' });
});

test('what is known and in date is not asked, and no more what makes no sense in this mouth', () => {
  const asked = { snacks_per_day: { how: 'asked', value: 2, askedOn: '2026-11-26' } } as const;
  const unknown = questions.filter(({ id }) => id !== 'snacks_per_day').map(({ id }) => ({ question: id, kind: 'not-asked' as const }));
  const ids = sheetLines(sheet({ answers: asked, unknown, notAsked: ['sugars_at_meals'] }), questions).map(({ id }) => id);
  expect(ids).not.toContain('snacks_per_day');
  expect(ids).not.toContain('sugars_at_meals');
});
