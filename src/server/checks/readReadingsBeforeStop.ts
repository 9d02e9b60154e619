import type { ActionContext } from '../../actions/context.ts';
import { findStopReadings } from '../../actions/questionReadings.ts';
import type { ReadingsBeforeStop } from '../../api/swabChecks.ts';
import { findCatalogEntry } from '../../store/read/catalog.ts';
import { listReadingsBetween, type ReadingBefore } from '../../store/read/checks.ts';
import { listPatientsById } from '../../store/read/patients.ts';

/**
 * Readings that counted between the last control in line and the one that was out, and those put under question since. One that did not
 * count for another reason is not among them.
 * @throws AppError READING_NOT_FOUND, INPUT_INVALID
 */
export async function readReadingsBeforeStop(
  { db, scope }: Pick<ActionContext, 'db' | 'scope'>,
  outId: string,
): Promise<ReadingsBeforeStop> {
  const question = await findStopReadings(db, scope, outId);
  const version = (await findCatalogEntry(db, scope, 'stop-readings', outId))?.version ?? 0;
  const asked = new Set(question.decisions.flatMap(({ readings }) => readings.map(({ id }) => id)));
  const rows = (await listReadingsBetween(db, scope, question)).filter(({ id, state }) => state !== 'void' || asked.has(id));
  const people = await listPatientsById(db, scope, [...new Set(rows.flatMap(({ patientId }) => patientId ?? []))]);
  const names = new Map(people.map(({ id, profile }) => [id, profile.name]));
  return { question, version, readings: rows.flatMap((row) => toLine(row, names)) };
}

function toLine(row: ReadingBefore, names: ReadonlyMap<string, string>): ReadingsBeforeStop['readings'][number][] {
  const { id, visitId, patientId, takenAt, rlu, bound, state } = row;
  const isNumber = state === 'valid' || state === 'flagged' || state === 'void';
  if (takenAt === null || rlu === null || !isNumber) return [];
  return [{ id, visitId, name: names.get(patientId ?? '') ?? 'somebody not on record', takenAt, rlu, bound: bound ?? 'exact', state }];
}
