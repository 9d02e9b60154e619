import type { Study } from '../core/checks/study.ts';
import { requireReason } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface DropStudyInput {
  readonly studyId: string;
  readonly expectedVersion: number;
  readonly reason: string;
}

/** Gives a study up. Its readings stay where they are and are used for nothing. @throws AppError STUDY_NOT_FOUND, STUDY_OVER, REASON_REQUIRED */
export async function dropStudy(
  context: ActionContext,
  { studyId, expectedVersion, reason }: DropStudyInput,
): Promise<{ version: number }> {
  const { db, scope, actor, now } = context;
  requireRight(actor, 'dropStudy');
  const dropped = { by: actor.name, at: now(), reason: requireReason(reason) };
  const { body } = await requireOpenStudy(db, scope, studyId);
  // The save holds only for the version that was seen, so what was looked at here is what is given up.
  const study: Study = { ...body, state: 'dropped', dropped };
  return saveCatalogEntry(context, 'dropStudy', { kind: 'study', id: studyId, body: study, expectedVersion });
}
