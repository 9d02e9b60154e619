import type { AccountTable, CredentialTable, Db, SessionTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

/** Undefined when the login name is taken. */
export function insertAccount(trx: Db, account: Pick<AccountTable, 'id' | 'login'>): Promise<AccountTable | undefined> {
  const insert = trx.insertInto('account').values({ ...account, state: 'active', version: 1 });
  return insert
    .onConflict((conflict) => conflict.doNothing())
    .returningAll()
    .executeTakeFirst();
}

export function insertCredential(trx: Db, credential: Omit<CredentialTable, 'version'>): Promise<CredentialTable> {
  return trx
    .insertInto('credential')
    .values({ ...credential, version: 1 })
    .returningAll()
    .executeTakeFirstOrThrow();
}

/** Undefined when the credential was changed since this version. */
export function updateSecret(trx: Db, { id, version }: CredentialTable, secret: string): Promise<CredentialTable | undefined> {
  return trx
    .updateTable('credential')
    .set({ secret, version: version + 1 })
    .where('id', '=', id)
    .where('version', '=', version)
    .returningAll()
    .executeTakeFirst();
}

export async function insertSession(trx: Db, session: SessionTable): Promise<void> {
  await trx.insertInto('session').values(session).execute();
}

export async function deleteSession(trx: Db, id: string): Promise<void> {
  await trx.deleteFrom('session').where('id', '=', id).execute();
}

export async function deleteSessionsOfAccount(trx: Db, accountId: string): Promise<void> {
  await trx.deleteFrom('session').where('accountId', '=', accountId).execute();
}

export async function deleteExpiredSessions(trx: Db, now: string): Promise<void> {
  await trx.deleteFrom('session').where('expiresAt', '<=', now).execute();
}

export async function deleteSessionsOfMember(trx: Db, scope: SiteScope, memberId: string): Promise<void> {
  await trx.deleteFrom('session').where('siteId', '=', scope.siteId).where('memberId', '=', memberId).execute();
}

export async function lockSession(trx: Db, id: string, lockedAt: string): Promise<void> {
  await trx.updateTable('session').set({ lockedAt }).where('id', '=', id).execute();
}
