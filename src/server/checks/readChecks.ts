import type { ActionContext } from '../../actions/context.ts';
import { requireStudy } from '../../actions/requireStudy.ts';
import { AppError } from '../../api/errors.ts';
import type { ChecksView, StudyView } from '../../api/swabChecks.ts';
import { listCatalog } from '../../store/read/catalog.ts';
import { countStudyReadings, listControls, listOverridesOn, listStudyReadings } from '../../store/read/checks.ts';
import { listMembers } from '../../store/read/members.ts';
import { listMeterChecks } from '../../store/read/meterChecks.ts';
import { findKeptPatient } from '../../store/read/patients.ts';
import { findSite } from '../../store/read/sites.ts';
import { listStudyPeople } from '../../store/read/studyPeople.ts';
import { localDateAt } from '../siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now'>;

/** Meters, lots, plans, every control, the studies without their readings, and who is trained. */
export async function readChecks(context: Reader): Promise<ChecksView> {
  const { db, scope } = context;
  const site = await findSite(db, scope);
  if (!site) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');
  const today = localDateAt(context.now(), site.timeZone);
  const counts = await countStudyReadings(db, scope);
  const studies = (await listCatalog(db, scope, 'study')).sort((a, b) => (a.body.plannedAt < b.body.plannedAt ? 1 : -1));
  const members = (await listMembers(db, scope)).filter(({ active }) => active);
  return {
    today,
    timeZone: site.timeZone,
    meters: (await listCatalog(db, scope, 'meter')).map(({ body, version }) => ({ meter: body, version })),
    lots: (await listCatalog(db, scope, 'lot')).map(({ body }) => body),
    plans: (await listCatalog(db, scope, 'control-plan')).map(({ body, version }) => ({ plan: body, version })),
    controls: await listControls(db, scope),
    meterChecks: await listMeterChecks(db, scope),
    meterCheckPlans: (await listCatalog(db, scope, 'meter-check-plan')).map(({ body, version }) => ({ plan: body, version })),
    overrides: await listOverridesOn(db, scope, today),
    resolutions: (await listCatalog(db, scope, 'stop-resolved')).map(({ body }) => body),
    questions: (await listCatalog(db, scope, 'stop-readings')).map(({ body, version }) => ({ question: body, version })),
    studies: studies.map(({ body: { runs, ...study }, version }) => ({
      ...study,
      version,
      swabs: runs.length,
      taken: counts.get(study.id) ?? 0,
    })),
    training: (await listCatalog(db, scope, 'training')).map(({ body }) => body),
    members: members.map(({ id, name, roles, trainedSwab }) => ({ id, name, roles, trainedSwab })),
  };
}

/** One study with its run sheet and its readings, void ones too. @throws AppError STUDY_NOT_FOUND */
export async function readStudy({ db, scope }: Reader, studyId: string): Promise<StudyView> {
  const { body, version } = await requireStudy(db, scope, studyId);
  const people = await listStudyPeople(db, scope, studyId);
  const names = new Map<string, string>();
  for (const { patientId } of people) {
    const chart = patientId === null ? undefined : await findKeptPatient(db, scope, patientId);
    if (patientId !== null && chart && chart.state !== 'erased') names.set(patientId, chart.profile.name);
  }
  return {
    study: body,
    version,
    readings: await listStudyReadings(db, scope, studyId),
    people: people.map(({ part, patientId, version: seen }) => ({ part, name: names.get(patientId ?? '') ?? null, version: seen })),
  };
}
