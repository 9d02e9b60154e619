import { draftDigest } from '../draftDigest.ts';
import type { Db, DraftFieldTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export interface DraftField {
  readonly path: string;
  readonly value: unknown;
  readonly memberId: string;
  readonly savedAt: string;
  readonly version: number;
}

export interface Draft {
  readonly fields: readonly DraftField[];
  /** Names this state of the draft; `closeVisit` wants it back. */
  readonly digest: string;
}

/** Every saved field of a visit, by path; no fields for an unknown visit or a closed one. */
export async function readDraft(db: Db, scope: SiteScope, visitId: string): Promise<Draft> {
  const query = db.selectFrom('draftField').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  const fields = (await query.orderBy('path').execute()).map(toDraftField);
  return { fields, digest: draftDigest(fields) };
}

/** Every saved field of several visits, by visit. */
export async function listDraftFieldsOfVisits(
  db: Db,
  scope: SiteScope,
  visitIds: readonly string[],
): Promise<readonly (DraftField & { readonly visitId: string })[]> {
  if (visitIds.length === 0) return [];
  const query = db.selectFrom('draftField').selectAll().where('siteId', '=', scope.siteId).where('visitId', 'in', visitIds);
  return (await query.orderBy('path').execute()).map((row) => ({ visitId: row.visitId, ...toDraftField(row) }));
}

/** The values that fields of a visit had before, and once it is closed those it closed with; by path, oldest first. */
export async function listDraftPast(db: Db, scope: SiteScope, visitId: string): Promise<DraftField[]> {
  const query = db.selectFrom('draftPast').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return (await query.orderBy('path').orderBy('version').execute()).map(toDraftField);
}

function toDraftField({ path, value, memberId, savedAt, version }: DraftFieldTable): DraftField {
  return { path, value: JSON.parse(value), memberId, savedAt, version };
}
