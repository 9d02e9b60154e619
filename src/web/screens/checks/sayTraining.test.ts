import { describe, expect, test } from 'vitest';
import type { TrainingEvent } from '../../../core/checks/training.ts';
import { isDue, sayDue, sayEvent, sayEvents } from './sayTraining.ts';

const noted = { onDate: '2026-11-02', notedBy: 'Wim Tansy', at: '2026-11-02T12:00:00.000Z' } as const;
const supervised: TrainingEvent = { ...noted, kind: 'supervised-swab', with: 'Ines Marrow' };
const byLead: TrainingEvent = { ...noted, kind: 'qualified-by-lead', reason: 'three swabs along the path' };
const byStudy: TrainingEvent = { ...noted, kind: 'qualified-by-study', studyId: 's1' };

describe('training in words', () => {
  test.each([
    { dueOn: undefined, words: 'no date set', due: false },
    { dueOn: '2026-11-27', words: '27 November 2026', due: false },
    { dueOn: '2026-11-26', words: 'due today', due: true },
    { dueOn: '2026-11-25', words: '25 November 2026, overdue', due: true },
  ])('looked at again by $dueOn: $words', ({ dueOn, words, due }) => {
    const training = { memberId: 'm', events: [], dueOn };
    expect(sayDue(training, '2026-11-26')).toBe(words);
    expect(isDue(training, '2026-11-26')).toBe(due);
  });

  test('each step names with whom, why, or which study, and who noted it', () => {
    expect(sayEvent(supervised, [])).toBe('2 November 2026: supervised swab with Ines Marrow; noted by Wim Tansy');
    expect(sayEvent(byLead, [])).toBe('2 November 2026: qualified by a lead: three swabs along the path; noted by Wim Tansy');
    const report = { onDate: '2026-10-17' } as NonNullable<Parameters<typeof sayEvent>[1][number]['report']>;
    expect(sayEvent(byStudy, [{ id: 's1', report }])).toContain('a study of hands, reported on 17 October 2026');
    expect(sayEvent(byStudy, [])).toBe('2 November 2026: qualified by a study of hands; noted by Wim Tansy');
  });

  test('the sum counts supervised swabs and keeps the last qualification', () => {
    expect(sayEvents([supervised, supervised, { ...byLead, onDate: '2025-01-01' }, byStudy])).toBe(
      '2 supervised swabs; qualified by a study of hands on 2 November 2026',
    );
  });
});
