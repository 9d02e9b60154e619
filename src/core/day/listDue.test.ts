import { describe, expect, test } from 'vitest';
import { questions } from '../../content/questions.ts';
import type { Answers } from '../visit/answer.ts';
import { type DueInput, listDue } from './listDue.ts';

const TODAY = '2026-11-25';
const carried = (ids: readonly string[], askedOn = '2026-03-04'): Answers =>
  Object.fromEntries(ids.map((id) => [id, { how: 'carried', value: id === 'weight_kg' ? 21 : [], askedOn }]));
const SAFETY = ['medicines', 'allergies', 'conditions', 'private_conditions'];

const says = (more: Partial<DueInput>) =>
  listDue({ onDate: TODAY, ageYears: 60, tasks: [], answers: {}, questions, goals: [], ...more }).map((thing) => thing.says);

describe('what is due', () => {
  test('a first visit says so once, and not every question that it will ask', () => {
    expect(says({})).toEqual(['first visit']);
    expect(says({ ageYears: 8 })).toEqual(['first visit', 'weight of the child: not known']);
  });

  test.each([
    ['2026-10-01', 'recall due since 2026-10-01'],
    [TODAY, 'recall due this day'],
    ['2027-01-10', 'recall not due before 2027-01-10'],
  ])('recall of %s', (due, words) => {
    expect(says({ lastVisitOn: '2026-03-04', tasks: [{ kind: 'recall', due, note: null }] })[0]).toBe(words);
  });

  test('no recall on record is said, and taken for none', () => {
    expect(says({ lastVisitOn: '2026-03-04' })[0]).toBe('no recall date on record');
  });

  test('the safety check is out of date with its date, unknown with a number, and gone once asked today', () => {
    const at = { lastVisitOn: '2026-03-04' };
    expect(says({ ...at, answers: carried(SAFETY) })).toContain('safety check: out of date, last asked 2026-03-04');
    expect(says({ ...at, answers: carried(SAFETY.slice(0, 3)) })).toContain(
      'safety check: out of date, last asked 2026-03-04; 1 answer not known',
    );
    expect(says({ ...at, answers: {} })).toContain('safety check: 4 answers not known');
    const asked = Object.fromEntries(SAFETY.map((id) => [id, { how: 'asked', value: [], askedOn: TODAY } as const]));
    expect(says({ ...at, answers: asked })).toEqual(['no recall date on record']);
  });

  test('no private answer and no private question is named', () => {
    const all = says({ lastVisitOn: '2026-03-04', ageYears: 30, answers: carried([...SAFETY, 'pregnant']) }).join(' ');
    expect(all).not.toMatch(/private|pregnan/i);
  });

  test('the weight of a child by name, with the last one', () => {
    expect(says({ ageYears: 8, lastVisitOn: '2026-03-04', answers: carried(['weight_kg']) })).toContain(
      'weight of the child: out of date, 21 kg on 2026-03-04',
    );
    expect(says({ ageYears: 18, lastVisitOn: '2026-03-04', answers: {} }).join(' ')).not.toContain('weight');
  });

  test('checks, refills and referrals that are due, goals in the own words; nothing before its day', () => {
    const tasks = [
      { kind: 'check', due: '2026-11-20', note: 'two weeks' },
      { kind: 'refill', due: TODAY, note: null },
      { kind: 'referral', due: '2026-11-26', note: null },
    ] as const;
    expect(says({ tasks, goals: ['chew less ice'], openSince: '2026-11-20' })).toEqual([
      'visit open since 2026-11-20, not closed',
      'check of home care, due 2026-11-20: two weeks',
      'refill, due 2026-11-25',
      'goal: “chew less ice”',
    ]);
  });
});
