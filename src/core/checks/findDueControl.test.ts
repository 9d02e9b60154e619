import { expect, test } from 'vitest';
import type { Control } from './control.ts';
import { findDueControl } from './findDueControl.ts';

const control = (takenAt: string, part: Partial<Control> = {}): Control => ({
  ...{ id: takenAt, meterId: 'a', lotId: 'birch', operator: null, takenAt, rlu: 3000, bound: 'exact', state: 'valid' },
  ...{ voidReason: null, note: {}, version: 1 },
  ...part,
});
const weekly = { kind: 'weekly-and-new-lot' } as const;
const on = { lotId: 'birch', today: '2026-11-25', timeZone: 'Pacific/Auckland' };

test.each([
  ['never', [], weekly, true, 'Due today: there is no control with this lot yet.'],
  ['only with another lot', [control('2026-11-24T20:00:00Z', { lotId: 'cedar' })], weekly, true, /no control with this lot/],
  ['only a void one', [control('2026-11-24T20:00:00Z', { state: 'void' })], weekly, true, /no control with this lot/],
  // 11:30 in UTC is the next day in Auckland.
  ['a week ago there', [control('2026-11-17T11:30:00Z')], weekly, true, 'Due today: the last control was on 18 November 2026.'],
  ['eight days ago there', [control('2026-11-17T10:30:00Z')], weekly, true, /^Due since 24 November 2026: the last control was on 17/],
  ['six days ago', [control('2026-11-19T00:00:00Z')], weekly, false, /next is due on 26 November 2026/],
  ['yesterday, daily', [control('2026-11-24T00:00:00Z')], { kind: 'daily' }, true, /^Due today/],
  ['yesterday, every third day', [control('2026-11-24T00:00:00Z')], { kind: 'own', days: 3 }, false, /due on 27 November 2026/],
  ['the newest of several', [control('2026-11-24T00:00:00Z'), control('2026-01-01T00:00:00Z')], weekly, false, /due on 1 December 2026/],
] as const)('%s', (_, controls, every, isDue, says) => {
  const due = findDueControl(every, controls, on);
  expect([due.isDue, due.says]).toEqual([isDue, typeof says === 'string' ? says : expect.stringMatching(says)]);
});
