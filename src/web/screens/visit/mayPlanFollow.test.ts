import { expect, it } from 'vitest';
import { applyField } from '../../../core/visit/applyField.ts';
import type { VisitInput } from '../../../core/visit/types.ts';
import { mayPlanFollow } from './mayPlanFollow.ts';

const input = {
  practice: {},
  person: { name: 'N. N.', birthDate: '1980-01-01' },
  visit: { onDate: '2026-11-25', answers: {}, findings: [], signed: [], agreed: { items: {} } },
} as unknown as VisitInput;
const asked = { how: 'asked', value: 3, askedOn: '2026-11-25' };

it.each([
  ['an answer', 'answers.snacks_per_day', asked],
  ['an answer taken back', 'answers.snacks_per_day', null],
  ['a reading', 'reading', { rlu: 900 }],
  ['a meter', 'meterId', 'm1'],
  ['findings', 'findings', []],
  ['the whole mouth seen', 'allExamined', true],
])('%s is drawn before the plan that it changes', (_what, path, value) => {
  expect(mayPlanFollow(input, applyField(input, path, value))).toBe(true);
});

it.each([
  ['a choice in the plan', applyField(input, 'agreed', { regimen: 'a+b' })],
  ['a field that was not there', applyField(input, 'language', 'es')],
  ['a field taken out', applyField(input, 'agreed', null)],
  ['a level', { ...input, visit: { ...input.visit, confirmed: { level: 'high' } } } as unknown as VisitInput],
  ['a signature', { ...input, visit: { ...input.visit, signed: [] } }],
  ['another name', { ...input, person: { ...input.person } }],
  ['another shelf', { ...input, practice: { ...input.practice } }],
  ['an answer together with a choice', applyField(applyField(input, 'answers.snacks_per_day', asked), 'agreed', {})],
])('%s is drawn with its plan', (_what, present) => {
  expect(mayPlanFollow(input, present)).toBe(false);
});
