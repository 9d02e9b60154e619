import type { AccountTable, CredentialTable, Db, SessionTable } from '../schema.ts';

/** Accounts belong to no site: one person may work in two practices of one store. */
export function findAccountByLogin(db: Db, login: string): Promise<AccountTable | undefined> {
  return db.selectFrom('account').selectAll().where('login', '=', login).where('state', '=', 'active').executeTakeFirst();
}

export function listCredentials(db: Db, accountId: string): Promise<CredentialTable[]> {
  return db.selectFrom('credential').selectAll().where('accountId', '=', accountId).orderBy('id').execute();
}

/** A session that has not run out and whose account, if it has one, is active; `id` is the digest of its token. */
export function findSession(db: Db, id: string, now: string): Promise<SessionTable | undefined> {
  return db
    .selectFrom('session')
    .leftJoin('account', 'account.id', 'session.accountId')
    .selectAll('session')
    .where('session.id', '=', id)
    .where('session.expiresAt', '>', now)
    .where(({ or, eb }) => or([eb('session.accountId', 'is', null), eb('account.state', '=', 'active')]))
    .executeTakeFirst();
}
