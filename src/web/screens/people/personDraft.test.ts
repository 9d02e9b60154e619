import { expect, test } from 'vitest';
import type { PersonDetails } from '../../../api/personSchema.ts';
import { buildPerson, EMPTY_GUARDIAN, EMPTY_HOME, personDraftOf } from './personDraft.ts';
import { sayPerson } from './sayPerson.ts';

const TODAY = '2026-11-25';
const least: PersonDetails = { name: 'Noor Castellane', birthDate: '2011-09-14' };
const full: PersonDetails = {
  ...least,
  chartNumber: '1002',
  language: 'es',
  largePrint: true,
  interpreter: 'Arabic',
  guardians: [{ name: "Siobhán O'Dwyer", relation: 'mother', phone: '555 0100', mayConsent: true }, { name: 'محمد العبد' }],
  homes: [
    { name: 'with her father', language: 'es' },
    { name: 'with her mother', language: 'en' },
  ],
  permissions: { care: { given: true, by: 'Noor Castellane', on: '2026-03-04' }, messages: { given: false, by: 'mother', on: TODAY } },
};

test.each([
  ['little is known', least],
  ['everything is known', full],
  ['asked, and no interpreter needed', { ...least, interpreter: '' }],
  ['asked, and no large print wanted', { ...least, largePrint: false }],
])('opened and saved again, nothing changes where %s', (_, details) => {
  expect(buildPerson(personDraftOf(details, TODAY))).toEqual({ ok: true, details });
});

test('what was not asked is said so, never as no', () => {
  const said = new Map(sayPerson({ ...least, guardians: [{ name: 'A' }] }));
  expect(said.get('Interpreter')).toBe('not asked');
  expect(said.get('Large print of the leaflet')).toBe('not asked');
  expect(said.get('Permission: care')).toBe('not asked');
  expect(said.get('Guardian 1')).toBe('\u2068A\u2069, relation not asked, phone not asked, may say yes to care: not asked');
});

test('every line that needs a look is named', () => {
  const draft = personDraftOf(full, TODAY);
  const built = buildPerson({
    ...draft,
    name: ' ',
    birthday: '20110931',
    interpreterLanguage: '',
    guardians: [...draft.guardians, EMPTY_GUARDIAN],
    homes: [EMPTY_HOME],
    permissions: { ...draft.permissions, care: { given: 'yes', by: '', on: 'soon' } },
  });
  expect(built.ok ? [] : Object.keys(built.problems).sort()).toEqual([
    'birthday',
    'guardians.2.name',
    'homes.0.name',
    'interpreterLanguage',
    'name',
    'permissions.care.by',
    'permissions.care.on',
  ]);
});
