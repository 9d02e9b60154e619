import type { SessionTable } from '../store/schema.ts';
import { deleteExpiredSessions, deleteSession, insertSession, lockSession } from '../store/write/accounts.ts';
import type { ActionContext } from './context.ts';

export interface NewSession {
  /** Digest of the token in the cookie. */
  readonly id: string;
  readonly accountId: string | null;
  readonly siteId: string;
  readonly memberId: string;
  /** UTC. */
  readonly expiresAt: string;
}

/** Outside the chain: a session is no record. Sessions that ran out are cleared on the way. The caller has checked the password. */
export async function startSession({ db, now }: Pick<ActionContext, 'db' | 'now'>, session: NewSession): Promise<void> {
  const row: SessionTable = { ...session, createdAt: now(), lockedAt: null };
  await db.transaction().execute(async (trx) => {
    await deleteExpiredSessions(trx, row.createdAt);
    await insertSession(trx, row);
  });
}

export async function endSession({ db }: Pick<ActionContext, 'db'>, id: string): Promise<void> {
  await deleteSession(db, id);
}

/** Another member, or the same one again, takes the place of a session: the old token is worth nothing from then on. */
export async function replaceSession({ db, now }: Pick<ActionContext, 'db' | 'now'>, oldId: string, session: NewSession): Promise<void> {
  await db.transaction().execute(async (trx) => {
    await deleteSession(trx, oldId);
    await insertSession(trx, { ...session, createdAt: now(), lockedAt: null });
  });
}

/** From now on it is answered nothing until somebody gives a code or a password. */
export async function hideSession({ db, now }: Pick<ActionContext, 'db' | 'now'>, id: string): Promise<void> {
  await lockSession(db, id, now());
}
