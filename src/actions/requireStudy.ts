import { AppError } from '../api/errors.ts';
import { type CatalogEntry, findCatalogEntry } from '../store/read/catalog.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** @throws AppError STUDY_NOT_FOUND */
export async function requireStudy(db: Db, scope: SiteScope, studyId: string): Promise<CatalogEntry<'study'>> {
  const study = await findCatalogEntry(db, scope, 'study', studyId);
  if (!study) throw new AppError('STUDY_NOT_FOUND', 'There is no such study in this practice.');
  return study;
}

/** A study that still takes readings. @throws AppError STUDY_NOT_FOUND, STUDY_OVER */
export async function requireOpenStudy(db: Db, scope: SiteScope, studyId: string): Promise<CatalogEntry<'study'>> {
  const study = await requireStudy(db, scope, studyId);
  const { state } = study.body;
  if (state === 'planned' || state === 'running') return study;
  throw new AppError('STUDY_OVER', `This study is ${state}: its readings stay as they are.`);
}
