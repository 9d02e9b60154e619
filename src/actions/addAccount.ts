import { AppError } from '../api/errors.ts';
import { startChain } from '../store/chain.ts';
import { ConflictError } from '../store/errors.ts';
import { findMember } from '../store/read/members.ts';
import { NO_SITE } from '../store/siteScope.ts';
import { insertAccount, insertCredential } from '../store/write/accounts.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface AddAccountInput {
  readonly memberId: string;
  readonly login: string;
  /** Hash of the password in PHC form, made before: a transaction awaits nothing but queries. */
  readonly passwordHash: string;
}

/** Lets a member sign in with a password. A member who has no account yet may set the first password for himself or herself. */
export async function addAccount(
  context: ActionContext,
  { memberId, login, passwordHash }: AddAccountInput,
): Promise<{ accountId: string }> {
  const { scope, actor, now, newId } = context;
  if (actor.memberId !== memberId) requireRight(actor, 'addAccount');
  const accountId = newId();
  const name = requireText('The sign-in name', login);
  return inTransaction(context, 'addAccount', async (trx, log) => {
    const member = await findMember(trx, scope, memberId);
    if (!member) throw new AppError('MEMBER_NOT_FOUND', 'There is no such member.');
    if (member.accountId !== null) throw new AppError('CONFLICT', `${member.name} has an account already.`);
    await startChain(trx, NO_SITE);
    const account = await insertAccount(trx, { id: accountId, login: name });
    if (!account) throw new AppError('CONFLICT', `The sign-in name ${name} is taken.`);
    log.row('account', account);
    log.row(
      'credential',
      await insertCredential(trx, { id: newId(), accountId, kind: 'password', secret: passwordHash, createdAt: now() }),
    );
    const changed = await updateRow(trx, scope, 'member', member, { accountId });
    if (!changed) throw new ConflictError('This member', { accountId }, await findMember(trx, scope, memberId));
    log.row('member', changed);
    return { accountId };
  });
}
