import { AppError } from '../api/errors.ts';
import type { ConfirmedLevel } from '../core/regimen/types.ts';
import type { Level } from '../core/risk/types.ts';
import { type DecisionBody, findConfirmedLevel } from '../store/read/results.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireOpenVisit } from './recordAnswer.ts';
import { resultTime } from './resultTime.ts';
import { requireRight } from './rights.ts';

export interface ConfirmLevelInput {
  readonly visitId: string;
  readonly protocol: string;
  readonly edition: string;
  /** What the list says of the saved answers; null where it says no level. */
  readonly proposed: Level | null;
  readonly level: Level;
  /** Needed when `level` is not the proposed one. */
  readonly reason?: string | undefined;
  /** Digest of what the list was given. */
  readonly inputDigest: string;
  readonly codeVersion: string;
  readonly contentVersion: string;
}

/** A professional's decision, as a new result: an earlier one of the same visit stays on the record. */
export async function confirmLevel(context: ActionContext, input: ConfirmLevelInput): Promise<ConfirmedLevel> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'confirmLevel');
  const { visitId, protocol, edition, proposed, level, inputDigest, codeVersion, contentVersion } = input;
  const isChanged = level !== proposed;
  const reason = isChanged || input.reason?.trim() ? requireReason(input.reason) : null;
  const body: DecisionBody = { proposed, by: actor.name };
  const decision = isChanged ? 'changed' : 'confirmed';
  const who = { decision, decidedBy: actor.memberId, reason, body: JSON.stringify(body) } as const;
  return inTransaction(context, 'confirmLevel', async (trx, log) => {
    await requireOpenVisit(trx, scope, visitId);
    const result = {
      id: newId(),
      visitId,
      kind: 'risk',
      protocol,
      edition,
      level,
      inputDigest,
      codeVersion,
      contentVersion,
      madeAt: await resultTime(trx, scope, visitId, now()),
      ...who,
    } as const;
    for (const row of await insertRows(trx, scope, 'result', [result])) log.row('result', row, reason);
    const confirmed = await findConfirmedLevel(trx, scope, visitId);
    if (!confirmed) throw new AppError('INTERNAL', 'The decision was written and could not be read.');
    return confirmed;
  });
}
