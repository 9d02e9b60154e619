import type { ReleasedAnswer, Speaker } from '../core/visit/types.ts';
import { keepDraftValues, saveDraftField } from '../store/write/draftFields.ts';
import { requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireOpenVisit } from './recordAnswer.ts';
import { requireRight } from './rights.ts';

export interface ReleasePrivateInput {
  readonly visitId: string;
  /** A private one; checked by the caller. */
  readonly question: string;
  /** False takes it back. */
  readonly isReleased: boolean;
  /** Who speaks now. */
  readonly heard?: Speaker['who'] | undefined;
}

/**
 * Puts one private answer on the leaflet of an open visit, under the name of who did it, or takes it off again. Kept like any field of
 * the visit: who and when stand on the record once it closes.
 * @throws AppError VISIT_NOT_FOUND, VISIT_CLOSED
 */
export async function releasePrivate(context: ActionContext, input: ReleasePrivateInput): Promise<ReleasedAnswer | null> {
  const { db, scope, actor, now } = context;
  requireRight(actor, 'releasePrivate');
  const { visitId, isReleased, heard } = input;
  const path = `released.${requireText('The question', input.question, 100)}`;
  const at = now();
  const released = isReleased ? { by: actor.name, at, ...(heard && { heard }) } : null;
  return db.transaction().execute(async (trx) => {
    await requireOpenVisit(trx, scope, visitId);
    await keepDraftValues(trx, scope, visitId, path);
    await saveDraftField(trx, scope, { visitId, path, value: JSON.stringify(released), memberId: actor.memberId, savedAt: at }, undefined);
    return released;
  });
}
