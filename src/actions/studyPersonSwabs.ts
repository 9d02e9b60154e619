import { findNearSwab, HOURS_BETWEEN_SWABS, type OtherSwab } from '../core/checks/nearSwab.ts';
import type { Study, StudyRun } from '../core/checks/study.ts';
import { parseTakenAt, sayDate } from '../core/reading/parseTakenAt.ts';
import type { SwabReading } from '../core/reading/types.ts';
import { readDraft } from '../store/read/draftFields.ts';
import { findKeptPatient, holdPatients } from '../store/read/patients.ts';
import { listReadings } from '../store/read/readings.ts';
import { findSite } from '../store/read/sites.ts';
import { listStudyPeople, listStudySwabs } from '../store/read/studyPeople.ts';
import { findOpenVisit } from '../store/read/visits.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** A swab that is to be taken into a study. */
interface NewSwab {
  readonly run: StudyRun;
  readonly takenAt: string;
}

/**
 * Those of the new swabs, in their order, whose person is linked to a chart and was swabbed within 24 hours: at a visit, for a study, or by
 * one of the new ones before it. Of people who are linked to nobody nothing is known here.
 */
export async function listTooSoon<S extends NewSwab>(
  trx: Db,
  scope: SiteScope,
  study: Study,
  swabs: readonly S[],
): Promise<{ readonly swab: S; readonly says: string }[]> {
  const links = await listStudyPeople(trx, scope, study.id);
  const timeZone = (await findSite(trx, scope))?.timeZone;
  const found: { swab: S; says: string }[] = [];
  for (const { part, patientId } of links) {
    const own = swabs.filter(({ run }) => run.part === part);
    if (patientId === null || own.length === 0) continue;
    const others = await listSwabsOfPerson(trx, scope, patientId);
    for (const swab of own) {
      const near = findNearSwab(swab.takenAt, others);
      if (near) found.push({ swab, says: sayTooSoon(part, near, timeZone) });
      else others.push({ takenAt: swab.takenAt, from: 'study' });
    }
  }
  return found;
}

/**
 * Void numbers of visits count, since the plaque was wiped off all the same. A number of a study that was taken back does not: as a rule it
 * stood in the wrong line, and its swab is typed again.
 */
async function listSwabsOfPerson(trx: Db, scope: SiteScope, linkedId: string): Promise<OtherSwab[]> {
  const patientId = (await findKeptPatient(trx, scope, linkedId))?.id ?? linkedId;
  // Two numbers of one person at the same time wait for each other.
  await holdPatients(trx, scope, [patientId]);
  const stored = (await listReadings(trx, scope, patientId)).filter(({ use, state }) => use === 'patient' && state !== 'not-taken');
  const atVisits = [...stored, ...(await listOpenSwab(trx, scope, patientId))].flatMap(
    ({ takenAt, activatedAt }) => takenAt ?? activatedAt ?? [],
  );
  const forStudies = (await listStudySwabs(trx, scope, patientId)).filter(({ state }) => state === 'valid');
  return [
    ...atVisits.map((takenAt) => ({ takenAt, from: 'visit' as const })),
    ...forStudies.map(({ takenAt }) => ({ takenAt, from: 'study' as const })),
  ];
}

/** The swab of a visit that is not closed yet stands in its draft alone. */
async function listOpenSwab(trx: Db, scope: SiteScope, patientId: string): Promise<SwabReading[]> {
  const visit = await findOpenVisit(trx, scope, patientId);
  const fields = visit ? (await readDraft(trx, scope, visit.id)).fields : [];
  // Draft fields are checked against their schema before they are saved.
  const reading = fields.find(({ path }) => path === 'reading')?.value as SwabReading | null | undefined;
  return reading && reading.notTaken === undefined ? [reading] : [];
}

function sayTooSoon(part: string, { takenAt, from }: OtherSwab, timeZone: string | undefined): string {
  const at = parseTakenAt(takenAt, timeZone);
  const when = at ? ` on ${sayDate(at.localDate)} at ${at.localTime}` : '';
  const where = from === 'visit' ? 'at a visit' : 'for a study';
  return `${part} was swabbed ${where}${when}, within ${HOURS_BETWEEN_SWABS} hours of this swab. At most one swab in ${HOURS_BETWEEN_SWABS} hours: this number is not taken into the study.`;
}
