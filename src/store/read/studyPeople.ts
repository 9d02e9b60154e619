import { partsOf, type StudyReading } from '../../core/checks/study.ts';
import type { Db } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';
import { findCatalogEntry, listCatalog } from './catalog.ts';
import { listChartsOf } from './charts.ts';
import { listStudyReadings } from './checks.ts';

/** The link of one person of a study to a chart, or what is left of it. */
export interface StudyPersonLink {
  readonly part: string;
  /** As it was linked: the chart may have been merged into another since. */
  readonly patientId: string | null;
  readonly version: number;
}

/** The id under which a link stands. */
export const studyPersonIdOf = (studyId: string, part: string): string => `${studyId}/${part}`;

/** Of one study, in the order of the names. */
export async function listStudyPeople(db: Db, scope: SiteScope, studyId: string): Promise<StudyPersonLink[]> {
  const study = await findCatalogEntry(db, scope, 'study', studyId);
  const links = study?.body.kind === 'paired-days' ? await listCatalog(db, scope, 'study-person') : [];
  const parts = new Map(study && partsOf(study.body).map((part) => [studyPersonIdOf(studyId, part), part]));
  return links.flatMap(({ id, body, version }) => {
    const part = parts.get(id);
    return part === undefined ? [] : [{ part, patientId: body.patientId, version }];
  });
}

/**
 * Every swab of a person for the studies in which this chart, or one merged into it, is linked; void ones too, since the plaque was wiped
 * off all the same. Studies given up count as well.
 */
export async function listStudySwabs(db: Db, scope: SiteScope, patientId: string): Promise<StudyReading[]> {
  const links = (await listCatalog(db, scope, 'study-person')).filter(({ body }) => body.patientId !== null);
  if (links.length === 0) return [];
  const charts = await listChartsOf(db, scope, [patientId]);
  const own = new Set(links.flatMap(({ id, body }) => (charts.has(body.patientId ?? '') ? [id] : [])));
  const studyIds = new Set([...own].map((id) => id.slice(0, id.indexOf('/'))));
  const swabs: StudyReading[] = [];
  for (const studyId of studyIds) {
    const study = await findCatalogEntry(db, scope, 'study', studyId);
    const isOwn = ({ run }: StudyReading) => own.has(studyPersonIdOf(studyId, study?.body.runs[run]?.part ?? ''));
    swabs.push(...(await listStudyReadings(db, scope, studyId)).filter(isOwn));
  }
  return swabs;
}
