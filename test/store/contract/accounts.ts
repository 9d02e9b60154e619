import { describe, expect, test } from 'vitest';
import { addAccount } from '../../../src/actions/addAccount.ts';
import { type ChangeMemberInput, changeMember } from '../../../src/actions/changeMember.ts';
import { changePassword } from '../../../src/actions/changePassword.ts';
import { endSession, hideSession, replaceSession, startSession } from '../../../src/actions/sessions.ts';
import { setCode } from '../../../src/actions/setCode.ts';
import type { Role } from '../../../src/api/apiTypes.ts';
import { findAccountByLogin, findSession, listCredentials } from '../../../src/store/read/accounts.ts';
import { findMember } from '../../../src/store/read/members.ts';
import { verify } from '../../../src/store/verify.ts';
import type { Bench } from '../contract.ts';

export function accountsContract(bench: Bench): void {
  describe('accounts and sessions', () => {
    const withAccount = async () => {
      const { as } = bench.practice();
      const { memberId } = as('hygienist').actor;
      const { accountId } = await addAccount(as('lead'), { memberId, login: 'hygiene', passwordHash: '$argon2id$first' });
      return { memberId, accountId };
    };

    test('a member gets one account with one password, and its hash is in no log', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { memberId, accountId } = await withAccount();
      expect((await findAccountByLogin(db, 'hygiene'))?.id).toBe(accountId);
      expect((await findMember(db, scope, memberId))?.accountId).toBe(accountId);
      expect((await listCredentials(db, accountId)).map(({ kind, secret }) => [kind, secret])).toEqual([['password', '$argon2id$first']]);
      await expect(addAccount(as('lead'), { memberId, login: 'again', passwordHash: 'h' })).rejects.toMatchObject({ code: 'CONFLICT' });
      const other = as('dentist').actor.memberId;
      await expect(addAccount(as('lead'), { memberId: other, login: 'hygiene', passwordHash: 'h' })).rejects.toMatchObject({
        code: 'CONFLICT',
      });
      const bodies = await db.selectFrom('changeBody').select('body').execute();
      expect(bodies.filter(({ body }) => body.includes('$argon2id$first'))).toEqual([]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a new password ends every session', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { memberId, accountId } = await withAccount();
      const session = { id: 'digest', accountId, siteId: scope.siteId, memberId, expiresAt: '2026-03-04T20:00:00.000Z' };
      await startSession(as('hygienist'), session);
      await changePassword(as('hygienist'), { memberId, passwordHash: '$argon2id$second' });
      expect(await findSession(db, 'digest', '2026-03-04T10:00:00.000Z')).toBeUndefined();
      expect((await listCredentials(db, accountId)).map(({ secret }) => secret)).toEqual(['$argon2id$second']);
      await expect(changePassword(as('dentist'), { memberId, passwordHash: 'h' })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a code stands beside the password, one for each member, and its hash is in no log', async () => {
      const { db } = bench.store();
      const { as } = bench.practice();
      await expect(setCode(as('hygienist'), { codeHash: '$argon2id$code' })).rejects.toMatchObject({ code: 'MEMBER_NOT_FOUND' });
      const { accountId } = await withAccount();
      for (const codeHash of ['$argon2id$code', '$argon2id$other']) await setCode(as('hygienist'), { codeHash });
      expect((await listCredentials(db, accountId)).map(({ kind, secret }) => [kind, secret])).toEqual([
        ['password', '$argon2id$first'],
        ['code', '$argon2id$other'],
      ]);
      const bodies = await db.selectFrom('changeBody').select('body').execute();
      expect(bodies.filter(({ body }) => body.includes('$argon2id$'))).toEqual([]);
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a hidden session says so until another takes its place', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { memberId, accountId } = await withAccount();
      const session = { accountId, siteId: scope.siteId, memberId, expiresAt: '2026-03-04T20:00:00.000Z' };
      await startSession(as('hygienist'), { ...session, id: 'one' });
      await hideSession(as('hygienist'), 'one');
      expect((await findSession(db, 'one', '2026-03-04T10:00:00.000Z'))?.lockedAt).toEqual(expect.any(String));
      await replaceSession(as('hygienist'), 'one', { ...session, id: 'two' });
      expect(await findSession(db, 'one', '2026-03-04T10:00:00.000Z')).toBeUndefined();
      expect((await findSession(db, 'two', '2026-03-04T10:00:00.000Z'))?.lockedAt).toBeNull();
    });

    test('a lead changes roles and lets a member go; the last lead stays, and nobody takes the role of a dentist', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const lead = as('lead').actor.memberId;
      const change = async (memberId: string, part: Partial<ChangeMemberInput>, by: 'lead' | 'dentist' = 'lead') => {
        const member = await findMember(db, scope, memberId);
        const same = { roles: member?.roles as Role[], trainedSwab: false, active: true, expectedVersion: member?.version ?? 0 };
        return changeMember(as(by), { memberId, ...same, ...part });
      };
      await expect(change(lead, { roles: ['lead', 'dentist'] })).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      for (const part of [{ roles: ['hygienist'] as Role[] }, { active: false }])
        await expect(change(lead, part)).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      const { memberId, accountId } = await withAccount();
      await expect(change(memberId, { roles: [] })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      await expect(change(memberId, {}, 'dentist')).rejects.toMatchObject({ code: 'NOT_ALLOWED' });
      await expect(change(memberId, { expectedVersion: 99 })).rejects.toMatchObject({ code: 'CONFLICT' });
      await change(memberId, { roles: ['hygienist', 'lead'], trainedSwab: true });
      expect(await findMember(db, scope, memberId)).toMatchObject({ roles: ['hygienist', 'lead'], trainedSwab: true });
      // Now there are two leads, and the first may go.
      const until = { siteId: scope.siteId, expiresAt: '2026-03-04T20:00:00.000Z' };
      await startSession(as('lead'), { id: 'mine', accountId, memberId, ...until });
      await change(memberId, { active: false });
      expect(await findSession(db, 'mine', '2026-03-04T10:00:00.000Z')).toBeUndefined();
      await expect(change(lead, { roles: ['hygienist'] })).rejects.toMatchObject({ code: 'INPUT_INVALID' });
      expect((await verify(db)).problems).toEqual([]);
    });

    test('a session ends at its hour, when it is ended, and with its account; the owner of the machine needs no account', async () => {
      const { db } = bench.store();
      const { scope, as } = bench.practice();
      const { memberId, accountId } = await withAccount();
      const until = '2026-03-04T20:00:00.000Z';
      const start = (id: string, of: string | null) =>
        startSession(as('lead'), { id, accountId: of, siteId: scope.siteId, memberId, expiresAt: until });
      await start('one', accountId);
      await start('two', null);
      const isOpen = async (id: string, now: string) => (await findSession(db, id, now)) !== undefined;
      expect(await isOpen('one', '2026-03-04T19:59:59.999Z')).toBe(true);
      expect(await isOpen('one', until)).toBe(false);
      await db.updateTable('account').set({ state: 'closed' }).where('id', '=', accountId).execute();
      expect(await isOpen('one', '2026-03-04T10:00:00.000Z')).toBe(false);
      expect(await isOpen('two', '2026-03-04T10:00:00.000Z')).toBe(true);
      await endSession(as('lead'), 'two');
      expect(await isOpen('two', '2026-03-04T10:00:00.000Z')).toBe(false);
    });
  });
}
