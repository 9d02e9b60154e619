import { AppError } from '../api/errors.ts';
import type { RefusedItem } from '../core/regimen/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { listCoursesOfVisit } from '../store/read/courses.ts';
import type { Refusal } from '../store/storedJson.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';
import { addCourse, requireVisitToSign } from './signItem.ts';

export interface RefuseItemInput {
  readonly visitId: string;
  readonly shelfItemId: string;
  readonly reason: string;
  /** The plan of the saved answers has the item waiting; without it only an item that waits on the record can be refused. */
  readonly waits?: boolean | undefined;
}

/**
 * A dentist has looked at an item that waits and does not release it. It stays on the record with the reason.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, VISIT_NOT_FOUND, SHELF_ITEM_NOT_FOUND, INPUT_INVALID, CONFLICT
 */
export async function refuseItem(context: ActionContext, { visitId, shelfItemId, waits, ...input }: RefuseItemInput): Promise<RefusedItem> {
  const { scope, actor, now } = context;
  requireRight(actor, 'refuseItem');
  const reason = requireReason(input.reason);
  return inTransaction(context, 'refuseItem', async (trx, log) => {
    const visit = await requireVisitToSign(trx, scope, visitId);
    const item = (await findCatalogEntry(trx, scope, 'shelf-item', shelfItemId))?.body;
    if (!item) throw new AppError('SHELF_ITEM_NOT_FOUND', 'There is no such item on the shelf.');
    const course = (await listCoursesOfVisit(trx, scope, visitId)).find((other) => other.shelfItemId === shelfItemId);
    if (course?.signature) throw new AppError('CONFLICT', `${item.name} is signed: take the signature back first.`);
    if (course?.refusal) return { shelfItemId, ...course.refusal };
    if (course?.release !== 'waiting' && waits !== true) throw new AppError('INPUT_INVALID', `${item.name} does not wait for a signature.`);
    const refusal: Refusal = { by: actor.name, at: now(), reason };
    const columns = { release: 'refused', refusal: JSON.stringify(refusal) } as const;
    if (!course) log.row('course', await addCourse(trx, context, visit, { shelfItemId, ...columns }), reason);
    else {
      const row = await updateRow(trx, scope, 'course', course, columns);
      if (!row) throw new ConflictError('This item', refusal, course);
      log.row('course', row, reason);
    }
    return { shelfItemId, ...refusal };
  });
}
