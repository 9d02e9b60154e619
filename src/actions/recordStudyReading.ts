import { AppError } from '../api/errors.ts';
import type { Bound } from '../core/reading/types.ts';
import type { CatalogEntry } from '../store/read/catalog.ts';
import { listStudyReadings } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { insertRows } from '../store/write/rows.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { requireOpenStudy } from './requireStudy.ts';
import { requireLot, requireMeter, requireNumberOf, requirePastTime } from './requireSupplies.ts';
import { requireRight } from './rights.ts';
import { listTooSoon } from './studyPersonSwabs.ts';
import { reasonAgainst, requireRun, studyReadingRow } from './studyReadings.ts';

export interface RecordStudyReadingInput {
  readonly studyId: string;
  /** Of the run sheet, from 0. */
  readonly run: number;
  readonly rlu: number;
  readonly bound?: Bound | undefined;
  /** Time with zone; absent = now. */
  readonly takenAt?: string | undefined;
  readonly operator?: string | undefined;
  readonly lotId?: string | undefined;
}

/**
 * One swab of the run sheet.
 * @returns `against`: why it is kept and does not count, or null
 * @throws AppError STUDY_NOT_FOUND, STUDY_OVER, INPUT_INVALID, CONFLICT where this swab has its reading already, SWAB_TOO_SOON where its
 *         person is linked to a chart and was swabbed within 24 hours
 */
export async function recordStudyReading(
  context: ActionContext,
  input: RecordStudyReadingInput,
): Promise<{ id: string; against: string | null }> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'recordStudyReading');
  const takenAt = requirePastTime(now(), input.takenAt);
  return inTransaction(context, 'recordStudyReading', async (trx, log) => {
    const entry = await requireOpenStudy(trx, scope, input.studyId);
    const study = entry.body;
    const run = requireRun(study, input.run);
    const meter = await requireMeter(trx, scope, run.meterId ?? study.meterId);
    if (input.lotId !== undefined) await requireLot(trx, scope, input.lotId);
    requireNumberOf(meter, input.rlu);
    const counted = (await listStudyReadings(trx, scope, study.id)).filter(({ state }) => state === 'valid');
    if (counted.some((other) => other.run === run.index))
      throw new AppError('CONFLICT', `Swab ${run.index + 1} has its reading; make that one void first if it was a mistake.`);
    const [tooSoon] = await listTooSoon(trx, scope, study, [{ run, takenAt }]);
    if (tooSoon) throw new AppError('SWAB_TOO_SOON', tooSoon.says);
    const against = reasonAgainst(study, run, takenAt, counted);
    const row = studyReadingRow(newId(), { study, run, meter, against, reading: { ...input, takenAt } });
    log.rows('reading', await insertRows(trx, scope, 'reading', [row]));
    await beginStudy(trx, log, context, entry);
    return { id: row.id, against };
  });
}

/** The first reading of a study begins it. */
export async function beginStudy(
  trx: Db,
  log: ChangeLog,
  { scope }: ActionContext,
  { id, body, version }: CatalogEntry<'study'>,
): Promise<void> {
  if (body.state !== 'planned') return;
  const begun = { ...body, state: 'running' };
  const row = await saveCatalogRow(trx, scope, { kind: 'study', id, body: JSON.stringify(begun) }, version);
  if (row) log.row('catalog', row);
}
