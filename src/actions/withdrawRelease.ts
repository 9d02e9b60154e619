import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { listAccessTo } from '../store/read/changes.ts';
import { type Course, listCoursesOfVisit } from '../store/read/courses.ts';
import type { Db } from '../store/schema.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { PRINTS } from './logAccess.ts';
import { hasRole, requireRight } from './rights.ts';
import { requireVisitToSign } from './signItem.ts';

export interface WithdrawReleaseInput {
  readonly visitId: string;
  readonly shelfItemId: string;
  /** Needed once the visit is closed, or once something was printed since the signature. */
  readonly reason?: string | undefined;
}

/**
 * Takes a signature or a refusal back: the item waits again. A dentist may take back any; a hygienist only a signature of her or his own
 * on a standing order. What was signed or refused before stays in the log.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, VISIT_NOT_FOUND, CONFLICT when there is nothing to take back
 */
export async function withdrawRelease(context: ActionContext, { visitId, shelfItemId, ...input }: WithdrawReleaseInput): Promise<void> {
  const { scope, actor } = context;
  requireRight(actor, 'withdrawRelease');
  await inTransaction(context, 'withdrawRelease', async (trx, log) => {
    const visit = await requireVisitToSign(trx, scope, visitId);
    const course = (await listCoursesOfVisit(trx, scope, visitId)).find((other) => other.shelfItemId === shelfItemId);
    const given = course?.signature ?? course?.refusal;
    if (!course || !given) throw new AppError('CONFLICT', 'This item is neither signed nor refused.');
    requireOwnOrDentist(context, course);
    const isOut = visit.state !== 'open' || (await isPrintedSince(trx, context, visitId, given.at));
    const reason = isOut || input.reason?.trim() ? requireReason(input.reason) : null;
    const row = await updateRow(trx, scope, 'course', course, { release: 'waiting', signature: null, refusal: null });
    if (!row) throw new ConflictError('This item', null, course);
    log.row('course', row, reason);
  });
}

function requireOwnOrDentist({ actor }: ActionContext, { signature }: Course): void {
  if (hasRole(actor, 'dentist')) return;
  if (signature?.standingOrder && signature.by === actor.name) return;
  throw new AppError('NOT_ALLOWED', 'Only a dentist may take this back.');
}

async function isPrintedSince(trx: Db, { scope }: ActionContext, visitId: string, at: string): Promise<boolean> {
  const access = await listAccessTo(trx, scope, { table: 'visit', id: visitId });
  return access.some((change) => PRINTS.includes(change.action) && change.at >= at);
}
