import type { ActionContext } from '../actions/context.ts';
import { findCover } from '../actions/signatureCovers.ts';
import type { CoversSaid, PersonRecord, StoredReading, StoredVisit } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import { censoredSummary } from '../core/reading/censoredSummary.ts';
import { type StoredVerdict, storedVerdictOf } from '../core/reading/recomputeReading.ts';
import type { ReadingAssessment } from '../core/reading/types.ts';
import { signedByOf } from '../core/regimen/buildLine.ts';
import { saySigner } from '../core/regimen/saySigner.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import type { PracticeFile } from '../core/visit/types.ts';
import { type Course, listCourses } from '../store/read/courses.ts';
import { listFirstReadings } from '../store/read/firstReadings.ts';
import { findKeptPatient } from '../store/read/patients.ts';
import { listReadings, type Reading } from '../store/read/readings.ts';
import { listComputedResults } from '../store/read/results.ts';
import { findPractice } from '../store/read/sites.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import { readVisitsOverTime } from './readVisitsOverTime.ts';
import { localDate } from './siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now'>;

/** One person over time, oldest first. A merged chart leads to the one that is kept. @throws AppError PATIENT_NOT_FOUND */
export async function readPerson(context: Reader, personId: string): Promise<PersonRecord> {
  const { db, scope } = context;
  const patient = await findKeptPatient(db, scope, personId);
  const stored = await findPractice(db, scope);
  if (!patient || !stored) throw new AppError('PATIENT_NOT_FOUND', 'This person is not in the records of this practice.');
  const { practice } = stored;
  const patientId = patient.id;
  const visits = await readVisitsOverTime(context, patientId);
  const allReadings = await listReadings(db, scope, patientId);
  const told = await readTold(context, visits);
  const readings = allReadings.flatMap((reading) => toStoredReading(reading, practice, told));
  const recall = (await listTasksOfPatient(db, scope, patientId)).find((task) => task.kind === 'recall' && task.state === 'open');
  return {
    id: patient.id,
    name: patient.profile.name,
    birthDate: patient.birthDate,
    ageYears: ageOn(patient.birthDate, await localDate(context)).ageYears,
    visits,
    readings,
    notTaken: allReadings.flatMap((reading) => toNotTaken(reading, visits)),
    firstReadings: await summariseFirstReadings(context, [...new Set(readings.map(({ meterId }) => meterId))]),
    courses: await Promise.all(
      (await listCourses(db, scope, patientId)).map(async (course) => ({
        ...toStoredCourse(course, practice, visits.find((v) => v.id === course.visitId)?.onDate),
        covers: await readCovers(context, course, practice),
      })),
    ),
    nextOn: recall?.due ?? null,
  };
}

/** The spread of first readings, for what a high one is expected to do by itself. */
async function summariseFirstReadings({ db, scope }: Reader, meterIds: readonly string[]): Promise<PersonRecord['firstReadings']> {
  const summaries = await Promise.all(
    meterIds.map(async (meterId) => {
      const first = await listFirstReadings(db, scope, meterId);
      const summary = first.length > 1 ? censoredSummary(first) : undefined;
      if (!summary?.ok) return [];
      const { geometricMeanRlu, sdLog } = summary.value;
      return [{ meterId, people: first.length, geometricMeanRlu, sdLog }];
    }),
  );
  return summaries.flat();
}

function toNotTaken({ use, visitId, state, reasons, takenAt }: Reading, visits: readonly StoredVisit[]): PersonRecord['notTaken'] {
  const onDate = visits.find((visit) => visit.id === visitId)?.onDate;
  const hasNumber = state !== 'not-taken' && state !== 'failed' && takenAt !== null;
  if (use !== 'patient' || onDate === undefined || hasNumber) return [];
  const words = reasons.map((reason) => reason.replaceAll('-', ' ')).join('; ');
  return [{ onDate, reason: state === 'failed' ? 'swab or meter failed' : words || 'reason not noted' }];
}

type Told = ReadonlyMap<string | null, { readonly onDate: string; readonly told: StoredVerdict | null }>;

/** By visit: what its reading was told to say when the visit closed, or was corrected last. */
async function readTold({ db, scope }: Reader, visits: readonly StoredVisit[]): Promise<Told> {
  const results = await listComputedResults(
    db,
    scope,
    visits.map(({ id }) => id),
    'reading',
  );
  const newest = new Map(results.map(({ visitId, body }) => [visitId, (body as { reading?: ReadingAssessment }).reading]));
  return new Map(
    visits.map(({ id, onDate }) => {
      const assessed = newest.get(id);
      return [id, { onDate, told: (assessed && storedVerdictOf(assessed)) ?? null }] as const;
    }),
  );
}

/** Readings without a time or a meter (not taken, failed before that) cannot be drawn and are left to their visit. */
function toStoredReading(reading: Reading, practice: PracticeFile, tolds: Told): StoredReading[] {
  const { id, use, visitId, takenAt, rlu, bound, state, reasons, meterId, operator, lotId } = reading;
  const meter = practice.meters.find((m) => m.id === meterId);
  if (use !== 'patient' || takenAt === null || !meter) return [];
  const { name, cutoffRlu, lowestRlu, highestRlu, cvAnalytical, cvWithinPerson, cvAnalyticalAssumed, cvWithinPersonAssumed, own } = meter;
  const { onDate = null, told = null } = tolds.get(visitId) ?? {};
  return [
    {
      id,
      takenAt,
      rlu,
      bound: bound ?? 'exact',
      state,
      reasons,
      meterId: meter.id,
      meterName: name,
      cutoffRlu,
      cvAnalytical,
      cvWithinPerson,
      cvAnalyticalAssumed,
      cvWithinPersonAssumed,
      lowestRlu,
      highestRlu,
      ...(own && { own }),
      operator,
      lotId,
      onDate,
      told,
    },
  ];
}

/** A course that never began is dated by the visit at which it was offered. */
function toStoredCourse(course: Course, practice: PracticeFile, offeredOn = ''): Omit<PersonRecord['courses'][number], 'covers'> {
  const { shelfItemId, state, release, fromDate, toDate, adherence, signature, reason, stopReason } = course;
  const name = practice.shelf.find((item) => item.id === shelfItemId)?.name ?? shelfItemId;
  return {
    shelfItemId,
    name,
    state,
    from: fromDate ?? offeredOn,
    to: toDate,
    release,
    adherence,
    signedBy: signature && saySigner(signedByOf(signature)),
    reason: stopReason ?? course.refusal?.reason ?? reason,
  };
}

async function readCovers(
  context: Reader,
  { signature, visitId, shelfItemId }: Course,
  practice: PracticeFile,
): Promise<CoversSaid | null> {
  const isAtVisit = practice.shelf.find((item) => item.id === shelfItemId)?.use.atVisit === true;
  if (!signature || visitId === null || isAtVisit) return null;
  const { left } = await findCover(context.db, context.scope, signature, { visitId, today: await localDate(context) });
  const { packs, until } = signature;
  return { ...(packs !== undefined && { packs }), ...(until !== undefined && { until }), left };
}
