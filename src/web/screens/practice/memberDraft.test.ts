import { expect, test } from 'vitest';
import { NewMember } from '../../../api/apiTypes.ts';
import { emptyMember, findMemberProblems, type MemberDraft, memberOf, ROLES } from './memberDraft.ts';

const member: MemberDraft = { name: ' Ada Example ', roles: ['dentist'], trainedSwab: false, password: '12345678' };

test('a whole member is what the server takes', () => {
  expect(findMemberProblems(member)).toEqual({});
  expect(NewMember.parse(memberOf(member))).toEqual({ ...member, name: 'Ada Example' });
});

test.each([
  ['name', { name: ' ' }],
  ['roles', { roles: [] }],
  ['password', { password: '1234567' }],
] as const)('%s is asked for by name', (field, part) => {
  expect(Object.keys(findMemberProblems({ ...member, ...part }))).toEqual([field]);
  expect(NewMember.safeParse(memberOf({ ...member, ...part })).success).toBe(false);
});

test('nothing is ticked for a new member, and every role can be', () => {
  expect(Object.keys(findMemberProblems(emptyMember))).toEqual(['name', 'roles', 'password']);
  expect(ROLES.map(({ id }) => id).sort()).toEqual(['assistant', 'dentist', 'hygienist', 'lead']);
});
