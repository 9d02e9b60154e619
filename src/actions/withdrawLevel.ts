import { ConflictError } from '../store/errors.ts';
import { listResults } from '../store/read/results.ts';
import { insertRows } from '../store/write/rows.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireOpenVisit } from './recordAnswer.ts';
import { resultTime } from './resultTime.ts';
import { requireRight } from './rights.ts';

export interface WithdrawLevelInput {
  readonly visitId: string;
  /** When the decision that is taken back was made: a newer one is somebody's own and stays. */
  readonly decidedAt: string;
  readonly reason?: string | undefined;
}

/**
 * Takes the newest decision on the level of an open visit back, as a new result: the level counts as not confirmed, and the decision
 * stays on the record.
 * @throws AppError VISIT_NOT_FOUND, VISIT_CLOSED; ConflictError when it is no longer the newest decision
 */
export async function withdrawLevel(context: ActionContext, { visitId, decidedAt, reason }: WithdrawLevelInput): Promise<void> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'withdrawLevel');
  await inTransaction(context, 'withdrawLevel', async (trx, log) => {
    await requireOpenVisit(trx, scope, visitId);
    const newest = (await listResults(trx, scope, visitId, 'risk')).filter(({ decision }) => decision !== null).at(-1);
    if (!newest || newest.decision === 'withdrawn' || newest.madeAt !== decidedAt)
      throw new ConflictError('The level', decidedAt, newest && { level: newest.level, decision: newest.decision, at: newest.madeAt });
    const { protocol, edition, inputDigest, codeVersion, contentVersion } = newest;
    const withdrawn = {
      id: newId(),
      visitId,
      kind: 'risk',
      protocol,
      edition,
      level: null,
      inputDigest,
      codeVersion,
      contentVersion,
      madeAt: await resultTime(trx, scope, visitId, now()),
      decision: 'withdrawn',
      decidedBy: actor.memberId,
      reason: reason?.trim() || null,
      body: JSON.stringify({ proposed: newest.level, by: actor.name }),
    } as const;
    for (const row of await insertRows(trx, scope, 'result', [withdrawn])) log.row('result', row, withdrawn.reason);
  });
}
