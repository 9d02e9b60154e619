import { AppError } from '../api/errors.ts';
import { partsOf, type Study, type StudyPerson } from '../core/checks/study.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { findKeptPatient, holdPatients } from '../store/read/patients.ts';
import { listStudyPeople, studyPersonIdOf } from '../store/read/studyPeople.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireRight } from './rights.ts';

export interface LinkStudyPersonInput {
  readonly studyId: string;
  /** The label under which the run sheet has the person. */
  readonly part: string;
  /** Null takes the link away. */
  readonly patientId: string | null;
  /** Version last seen, 0 for a first link. */
  readonly expectedVersion: number;
}

/**
 * Says which chart stands behind a person of a study, so that swabs at visits and for the study keep their 24 hours. The label, the run
 * sheet and the numbers stay without a name.
 * @throws AppError STUDY_NOT_FOUND, STUDY_OVER, INPUT_INVALID, PATIENT_NOT_FOUND; ConflictError
 */
export async function linkStudyPerson(context: ActionContext, input: LinkStudyPersonInput): Promise<{ version: number }> {
  const { scope, actor } = context;
  requireRight(actor, 'linkStudyPerson');
  return inTransaction(context, 'linkStudyPerson', async (trx, log) => {
    const study = (await requireOpenStudy(trx, scope, input.studyId)).body;
    requirePerson(study, input.part);
    const body: StudyPerson = { patientId: input.patientId === null ? null : await requireFree(trx, scope, study, input.patientId) };
    const id = studyPersonIdOf(study.id, input.part);
    const row = await saveCatalogRow(trx, scope, { kind: 'study-person', id, body: JSON.stringify(body) }, input.expectedVersion);
    if (!row) throw new ConflictError('This link', body, await findCatalogEntry(trx, scope, 'study-person', id));
    log.row('catalog', row);
    return { version: row.version };
  });
}

function requirePerson(study: Study, part: string): void {
  if (study.kind !== 'paired-days') throw new AppError('INPUT_INVALID', 'studyId: only a study on people links them to charts');
  if (!partsOf(study).includes(part)) throw new AppError('INPUT_INVALID', `part: nobody on this run sheet is called "${part}"`);
}

/** The chart that is kept for this one, where it is no other person of the study already. */
async function requireFree(trx: Db, scope: SiteScope, study: Study, patientId: string): Promise<string> {
  const kept = await findKeptPatient(trx, scope, patientId);
  if (!kept || kept.state === 'erased') throw new AppError('PATIENT_NOT_FOUND', 'There is no such person in this practice.');
  // Two links of one chart at the same time wait for each other.
  await holdPatients(trx, scope, [kept.id]);
  for (const link of await listStudyPeople(trx, scope, study.id)) {
    if (link.patientId === null || (await findKeptPatient(trx, scope, link.patientId))?.id !== kept.id) continue;
    throw new AppError('INPUT_INVALID', `patientId: this chart is ${link.part} of this study already`);
  }
  return kept.id;
}
