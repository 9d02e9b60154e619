import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { listCredentials } from '../store/read/accounts.ts';
import { findMember } from '../store/read/members.ts';
import { deleteSessionsOfAccount, updateSecret } from '../store/write/accounts.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

/** Own password, or another member's by a lead. Ends every session of the account. */
export async function changePassword(
  context: ActionContext,
  input: { readonly memberId: string; readonly passwordHash: string },
): Promise<void> {
  requireRight(context.actor, context.actor.memberId === input.memberId ? 'changePassword' : 'addAccount');
  await inTransaction(context, 'changePassword', async (trx, log) => {
    const member = await findMember(trx, context.scope, input.memberId);
    if (!member?.accountId) throw new AppError('MEMBER_NOT_FOUND', 'There is no such member with an account.');
    const password = (await listCredentials(trx, member.accountId)).find(({ kind }) => kind === 'password');
    const changed = password && (await updateSecret(trx, password, input.passwordHash));
    if (!changed) throw new ConflictError('This password', null, null);
    log.row('credential', changed);
    await deleteSessionsOfAccount(trx, member.accountId);
  });
}
