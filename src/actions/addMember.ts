import type { Role } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface AddMemberInput {
  readonly name: string;
  readonly roles: readonly Role[];
  /** The practice has trained this member to take swabs. */
  readonly trainedSwab: boolean;
}

export async function addMember(context: ActionContext, { name, roles, trainedSwab }: AddMemberInput): Promise<{ memberId: string }> {
  requireRight(context.actor, 'addMember');
  if (roles.length === 0) throw new AppError('INPUT_INVALID', 'A member has at least one role.');
  const memberId = context.newId();
  const member = {
    id: memberId,
    accountId: null,
    name: requireText('The name', name),
    roles: JSON.stringify([...new Set(roles)]),
    trainedSwab: trainedSwab ? 1 : 0,
    active: 1,
  };
  return inTransaction(context, 'addMember', async (trx, log) => {
    log.rows('member', await insertRows(trx, context.scope, 'member', [member]));
    return { memberId };
  });
}
