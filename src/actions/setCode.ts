import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { listCredentials } from '../store/read/accounts.ts';
import { findMember } from '../store/read/members.ts';
import { insertCredential, updateSecret } from '../store/write/accounts.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

/** Sets one's own short code. The caller has checked the password, and hashed the code before: a transaction awaits only queries. */
export async function setCode(context: ActionContext, { codeHash }: { readonly codeHash: string }): Promise<void> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'setCode');
  await inTransaction(context, 'setCode', async (trx, log) => {
    const member = await findMember(trx, scope, actor.memberId);
    if (!member?.accountId) throw new AppError('MEMBER_NOT_FOUND', 'A code needs a password first.');
    const before = (await listCredentials(trx, member.accountId)).find(({ kind }) => kind === 'code');
    const created = { id: newId(), accountId: member.accountId, kind: 'code', secret: codeHash, createdAt: now() } as const;
    const row = before ? await updateSecret(trx, before, codeHash) : await insertCredential(trx, created);
    if (!row) throw new ConflictError('This code', null, null);
    log.row('credential', row);
  });
}
