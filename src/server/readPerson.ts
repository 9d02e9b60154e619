import type { ActionContext } from '../actions/context.ts';
import type { PersonRecord, StoredReading, StoredVisit } from '../api/bundles.ts';
import { AppError } from '../api/errors.ts';
import type { Leaflet } from '../core/leaflet/types.ts';
import { ageOn } from '../core/visit/ageOn.ts';
import type { PracticeFile } from '../core/visit/types.ts';
import { type Course, listCourses } from '../store/read/courses.ts';
import { listFindings } from '../store/read/findings.ts';
import { findPatient } from '../store/read/patients.ts';
import { listReadings, type Reading } from '../store/read/readings.ts';
import { findConfirmedLevel, listResults } from '../store/read/results.ts';
import { findPractice } from '../store/read/sites.ts';
import { listTasksOfPatient } from '../store/read/tasks.ts';
import { listVisits, type Visit } from '../store/read/visits.ts';
import { localDate } from './siteClock.ts';

type Reader = Pick<ActionContext, 'db' | 'scope' | 'now'>;

/** One person over time, oldest first. @throws AppError PATIENT_NOT_FOUND */
export async function readPerson(context: Reader, patientId: string): Promise<PersonRecord> {
  const { db, scope } = context;
  const patient = await findPatient(db, scope, patientId);
  const stored = await findPractice(db, scope);
  if (!patient || !stored) throw new AppError('PATIENT_NOT_FOUND', 'This person is not in the records of this practice.');
  const { practice } = stored;
  const visits: StoredVisit[] = [];
  for (const visit of await listVisits(db, scope, patientId)) visits.push(await readVisit(context, visit));
  const recall = (await listTasksOfPatient(db, scope, patientId)).find((task) => task.kind === 'recall' && task.state === 'open');
  return {
    id: patient.id,
    name: patient.profile.name,
    birthDate: patient.birthDate,
    ageYears: ageOn(patient.birthDate, await localDate(context)).ageYears,
    visits,
    readings: (await listReadings(db, scope, patientId)).flatMap((reading) => toStoredReading(reading, practice)),
    courses: (await listCourses(db, scope, patientId)).map((course) =>
      toStoredCourse(course, practice, visits.find((v) => v.id === course.visitId)?.onDate),
    ),
    nextOn: recall?.due ?? null,
  };
}

async function readVisit({ db, scope }: Reader, { id, onDate, kind, state }: Visit): Promise<StoredVisit> {
  const confirmed = await findConfirmedLevel(db, scope, id);
  const plan = (await listResults(db, scope, id, 'regimen')).at(-1)?.body as { leaflet?: Leaflet } | undefined;
  return {
    id,
    onDate,
    kind,
    state,
    confirmed: confirmed ?? null,
    level: confirmed?.level ?? null,
    findings: await listFindings(db, scope, id),
    leaflet: plan?.leaflet ?? null,
  };
}

/** Readings without a time or a meter (not taken, failed before that) cannot be drawn and are left to their visit. */
function toStoredReading({ id, use, takenAt, rlu, bound, state, reasons, meterId }: Reading, practice: PracticeFile): StoredReading[] {
  const meter = practice.meters.find((m) => m.id === meterId);
  if (use !== 'patient' || takenAt === null || !meter) return [];
  const { name, cutoffRlu, cvAnalytical, cvWithinPerson } = meter;
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
    },
  ];
}

/** A course that never began is dated by the visit at which it was offered. */
function toStoredCourse(course: Course, practice: PracticeFile, offeredOn = ''): PersonRecord['courses'][number] {
  const { shelfItemId, state, fromDate, toDate, signature, reason, stopReason } = course;
  const name = practice.shelf.find((item) => item.id === shelfItemId)?.name ?? shelfItemId;
  return {
    shelfItemId,
    name,
    state,
    from: fromDate ?? offeredOn,
    to: toDate,
    signedBy: signature?.by ?? null,
    reason: stopReason ?? reason,
  };
}
