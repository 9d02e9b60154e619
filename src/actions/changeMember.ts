import type { Role } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { findMember, listMembers, type Member } from '../store/read/members.ts';
import { deleteSessionsOfMember } from '../store/write/accounts.ts';
import { updateRow } from '../store/write/rows.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface ChangeMemberInput {
  readonly memberId: string;
  readonly roles: readonly Role[];
  readonly trainedSwab: boolean;
  /** False = no longer works here: nobody signs in by this name any more, and what was signed stays signed. */
  readonly active: boolean;
  /** Version last seen. */
  readonly expectedVersion: number;
}

/** What a member may do, or that a member has left. A lead stays, and nobody gives herself or himself the right to sign. */
export async function changeMember(context: ActionContext, input: ChangeMemberInput): Promise<{ version: number }> {
  const { scope, actor } = context;
  requireRight(actor, 'changeMember');
  const { memberId, active, trainedSwab, expectedVersion } = input;
  const roles = [...new Set(input.roles)];
  if (roles.length === 0) throw new AppError('INPUT_INVALID', 'A member has at least one role.');
  return inTransaction(context, 'changeMember', async (trx, log) => {
    const member = await findMember(trx, scope, memberId);
    if (!member) throw new AppError('MEMBER_NOT_FOUND', 'There is no such member.');
    if (memberId === actor.memberId && roles.includes('dentist') && !member.roles.includes('dentist'))
      throw new AppError('NOT_ALLOWED', 'Nobody gives herself or himself the role of a dentist: another lead has to.');
    const after = (await listMembers(trx, scope)).map((other) => (other.id === memberId ? { ...other, roles, active } : other));
    if (!after.some(isWorkingLead)) throw new AppError('INPUT_INVALID', 'The practice keeps at least one lead who works here.');
    const columns = { roles: JSON.stringify(roles), trainedSwab: trainedSwab ? 1 : 0, active: active ? 1 : 0 };
    const row = await updateRow(trx, scope, 'member', { id: memberId, version: expectedVersion }, columns);
    if (!row) throw new ConflictError(member.name, columns, member);
    log.row('member', row);
    if (!active) await deleteSessionsOfMember(trx, scope, memberId);
    return { version: row.version };
  });
}

const isWorkingLead = ({ roles, active }: Pick<Member, 'roles' | 'active'>) => active && roles.includes('lead');
