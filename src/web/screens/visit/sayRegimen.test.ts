import { expect, test } from 'vitest';
import type { PlanLine, Regimen } from '../../../core/regimen/types.ts';
import { waysOf } from './regimenWays.ts';
import { sayDifference, sayLeftOut, sayRegimen, saySupply } from './sayRegimen.ts';

const line = (id: string, part: Partial<PlanLine> = {}): PlanLine => ({
  shelfItemId: id,
  name: `Pack ${id}`,
  meets: [],
  state: 'proposed',
  use: { timesPerDay: 2, amount: '' },
  because: [],
  warnings: [],
  sources: [],
  ...part,
});
const regimen = (lines: readonly PlanLine[], part: Partial<Regimen> = {}): Regimen =>
  ({
    id: lines.map((l) => l.shelfItemId).join('+'),
    lines,
    why: [],
    tasksPerDay: 4,
    monthlyCostCents: 1114,
    supply: [],
    refillOn: null,
    unmet: [],
    ...part,
  }) as Regimen;
const place = { place: 'UK', undecided: [] } as const;
const says = (of: Regimen, undecided: readonly 'antimicrobial'[] = []) =>
  sayRegimen(of, { place: 'UK', undecided }).map((part) => part.says);

test('tasks, cost, refill, what stays open and why, each as a sentence', () => {
  const one = regimen([line('a')], {
    supply: [{ shelfItemId: 'a', days: 30, refillOn: '2026-12-25' }],
    refillOn: '2026-12-25',
    unmet: [
      { need: 'saliva', because: '' },
      { need: 'antimicrobial', because: '' },
    ],
    why: ['Fewest tasks among those that fit.'],
  });
  expect(says(one, ['antimicrobial'])).toEqual([
    '4 tasks a day at home, about £11.14 a month.',
    'First refill 25 December 2026.',
    'Leaves open: saliva.',
    'Fewest tasks among those that fit.',
  ]);
  expect(says(one)).toContain('Leaves open: saliva and antimicrobial.');
});

test('a missing price, and a pack of which nobody knows how long it lasts, are said as not known and never as nothing', () => {
  const parts = sayRegimen(
    regimen([line('a')], { monthlyCostCents: null, supply: [{ shelfItemId: 'a', days: null, refillOn: null }] }),
    place,
  );
  expect(parts).toContainEqual({ says: 'Cost a month: price not known.', isUnknown: true });
  expect(parts).toContainEqual({ says: 'How long 1 pack will last is not known.', isUnknown: true });
  expect(parts.map((part) => part.says).join(' ')).not.toMatch(/£|0\.00/);
  expect(saySupply({ shelfItemId: 'a', days: null, refillOn: null })).toBe('how long a pack lasts is not known');
  expect(saySupply({ shelfItemId: 'a', days: 1, refillOn: '2026-11-26' })).toBe('one pack lasts 1 day, until 26 November 2026');
});

test('what waits for a signature is said to be left out of tasks and cost, where it is for the home', () => {
  expect(says(regimen([line('a', { state: 'waiting-for-signature' })]))[0]).toMatch(/, without what waits for a signature\.$/);
  const atVisit = line('v', { state: 'waiting-for-signature', use: { timesPerDay: 0, amount: '', atVisit: true } });
  expect(says(regimen([atVisit]))[0]).toBe('4 tasks a day at home, about £11.14 a month.');
});

test('another regimen is told by how it differs from the plan', () => {
  const plan = regimen([line('a'), line('b')]);
  expect(sayDifference(regimen([line('a'), line('c')]), plan)).toBe('Pack c in the place of pack b; the rest as in the plan.');
  expect(sayDifference(regimen([line('a')]), plan)).toBe('The plan without pack b.');
  expect(sayDifference(regimen([line('a'), line('b'), line('c')]), plan)).toBe('The plan, and pack c.');
});

test('what is signed or was agreed and would leave the plan is named first', () => {
  const from = [line('a', { state: 'signed' }), line('b'), line('c')];
  expect(sayLeftOut(from, [line('c')], { items: { b: 'agreed', c: 'agreed' } })).toBe(
    'Taking this leaves out Pack a, which is signed and Pack b, which was agreed today.',
  );
  expect(sayLeftOut(from, from, { items: { b: 'agreed' } })).toBeUndefined();
  expect(sayLeftOut(from, [line('a')], { items: { b: 'declined' } })).toBeUndefined();
});

test('beside the plan stands the best other regimen, the rest follow in their order', () => {
  const [one, two, three] = [regimen([line('a')]), regimen([line('b')]), regimen([line('c')])] as const;
  expect(waysOf({ regimens: [one, two, three], chosenRegimen: 'a' })).toEqual({ chosen: one, other: two, rest: [three] });
  expect(waysOf({ regimens: [one, two, three], chosenRegimen: 'c' })).toEqual({ chosen: three, other: one, rest: [two] });
  expect(waysOf({ regimens: [one], chosenRegimen: 'a' })).toBeUndefined();
  expect(waysOf({})).toBeUndefined();
});
