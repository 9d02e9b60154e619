import { describe, expect, test } from 'vitest';
import { addAccount } from '../../../src/actions/addAccount.ts';
import { changePassword } from '../../../src/actions/changePassword.ts';
import { endSession, startSession } from '../../../src/actions/sessions.ts';
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
