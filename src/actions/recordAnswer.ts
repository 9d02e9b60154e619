import { AppError } from '../api/errors.ts';
import { ConflictError } from '../store/errors.ts';
import { readDraft } from '../store/read/draftFields.ts';
import { findVisitHeld, type Visit } from '../store/read/visits.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { keepDraftValues, saveDraftField } from '../store/write/draftFields.ts';
import { requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';

export interface RecordAnswerInput {
  readonly visitId: string;
  /** Path in the visit, e.g. "answers.can_spit" or "reading". */
  readonly path: string;
  /** Any JSON value; checked against its schema by the caller. */
  readonly value: unknown;
  /** Version last seen of this field, 0 for none; absent = save over whatever is there. */
  readonly expectedVersion?: number | undefined;
}

export interface SavedAnswer {
  readonly path: string;
  readonly version: number;
  readonly savedAt: string;
}

const LONGEST_VALUE = 100_000;

/**
 * Saves one field of an open visit. When this returns, the field is on the disk. Outside the chain.
 * @throws AppError VISIT_NOT_FOUND, VISIT_CLOSED; ConflictError with both values
 */
export async function recordAnswer(context: ActionContext, input: RecordAnswerInput): Promise<SavedAnswer> {
  const { db, scope, actor, now } = context;
  requireRight(actor, 'recordAnswer');
  const { visitId, expectedVersion } = input;
  const path = requireText('The path', input.path);
  const value = JSON.stringify(input.value);
  if (value === undefined || value.length > LONGEST_VALUE) throw new AppError('INPUT_INVALID', `${path} is not a value that can be saved.`);
  return db.transaction().execute(async (trx) => {
    await requireOpenVisit(trx, scope, visitId);
    if (expectedVersion !== 0) await keepDraftValues(trx, scope, visitId, path);
    const saved = await saveDraftField(trx, scope, { visitId, path, value, memberId: actor.memberId, savedAt: now() }, expectedVersion);
    if (saved) return { path, version: saved.version, savedAt: saved.savedAt };
    const current = (await readDraft(trx, scope, visitId)).fields.find((field) => field.path === path);
    throw new ConflictError(path, input.value, current);
  });
}

/** The visit, which stays open until the transaction ends. */
export async function requireOpenVisit(trx: Db, scope: SiteScope, visitId: string): Promise<Visit> {
  const visit = await findVisitHeld(trx, scope, visitId);
  if (!visit) throw new AppError('VISIT_NOT_FOUND', 'There is no such visit in this practice.');
  if (visit.state !== 'open') throw new AppError('VISIT_CLOSED', 'This visit is closed.');
  return visit;
}
