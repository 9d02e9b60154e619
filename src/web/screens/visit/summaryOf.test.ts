import { expect, test } from 'vitest';
import type { VisitAssessment } from '../../../core/visit/types.ts';
import { summaryOf } from './summaryOf.ts';

const assessment = {
  confirmed: { level: 'high' },
  proposed: null,
  proposedSentence: '',
  mouth: { kind: 'level-applies' },
  plan: { lines: ['paste', 'gel', 'gum'].map((id) => ({ shelfItemId: id, state: id === 'gel' ? 'waiting-for-signature' : 'proposed' })) },
} as unknown as VisitAssessment;

test('what was turned down is counted as that, and waits for no signature', () => {
  expect(summaryOf(assessment, undefined)).toBe('Level high, confirmed. 3 items in the plan, 1 waiting for a signature.');
  expect(summaryOf(assessment, { items: { paste: 'declined', gum: 'agreed' } })).toBe(
    'Level high, confirmed. 3 items in the plan, 1 of them turned down, 1 waiting for a signature.',
  );
  expect(summaryOf(assessment, { items: { gel: 'not-affordable' } })).toBe(
    'Level high, confirmed. 3 items in the plan, 1 of them turned down.',
  );
});
