import { expect, test } from 'vitest';
import { listToDos } from './listToDos.ts';

const member = { id: 'm', name: 'Ada Example', roles: ['lead'], trainedSwab: true, active: true, hasPassword: true };
const lot = { lot: { id: 'l', name: 'L', expiresOn: '2027-01-01' }, version: 1 };
const ready = { jurisdiction: 'UK', shelfSize: 1, practice: { lots: [lot], members: [member] }, isAnyoneSeen: false } as const;
const ids = (part: Partial<Parameters<typeof listToDos>[0]>) => listToDos({ ...ready, ...part }).map(({ id }) => id);

test('nothing once the practice is ready', () => {
  expect(ids({})).toEqual([]);
});

test.each([
  ['place', { jurisdiction: 'unknown' }],
  ['lot', { practice: { lots: [], members: [member] } }],
  ['shelf', { shelfSize: 0 }],
  ['password', { practice: { lots: [lot], members: [member, { ...member, hasPassword: false }] } }],
] as const)('%s', (id, part) => {
  expect(ids(part)).toEqual([id]);
});

test('a member who left needs no password, and a practice elsewhere is not asked for ever', () => {
  expect(ids({ practice: { lots: [lot], members: [member, { ...member, active: false, hasPassword: false }] } })).toEqual([]);
  expect(ids({ jurisdiction: 'unknown', isAnyoneSeen: true })).toEqual([]);
});
