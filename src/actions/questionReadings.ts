import { AppError } from '../api/errors.ts';
import type { ReadingsDecision, StopReadings } from '../core/checks/control.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { findControl, listReadingsBetween, type ReadingBefore } from '../store/read/checks.ts';
import type { Db, ReadingTable } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { updateRow } from '../store/write/rows.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { readStops } from './readStops.ts';
import { requireRight } from './rights.ts';

export interface QuestionReadingsInput {
  /** The control that began the stop. */
  readonly outId: string;
  readonly decision: ReadingsDecision['decision'];
  readonly reason: string;
  /** Version of what was decided before, 0 where nothing was. */
  readonly expectedVersion: number;
}

/**
 * Readings since the last control in line may have been off already when a control is out of limits. A member with the right puts all of
 * them under question, so that they count for no decision, or leaves them, each with a reason. Only this changes them, and leaving them
 * later brings back those that were put under question. What a closed visit was told stays on its record.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, READING_NOT_FOUND, INPUT_INVALID; ConflictError
 */
export async function questionReadings(
  context: ActionContext,
  input: QuestionReadingsInput,
): Promise<{ version: number; changed: number }> {
  const { scope, actor, now } = context;
  requireRight(actor, 'questionReadings');
  const reason = requireReason(input.reason);
  return inTransaction(context, 'questionReadings', async (trx, log) => {
    const found = await findStopReadings(trx, scope, input.outId);
    const before = found.decisions.at(-1);
    if (before?.decision === input.decision) throw new AppError('INPUT_INVALID', 'decision: this is how they stand already');
    const said = { decision: input.decision, by: actor.name, at: now(), reason };
    const rows = await listReadingsBetween(trx, scope, found);
    const changes = input.decision === 'left' ? broughtBack(rows, found) : putUnderQuestion(rows, said, found);
    for (const { row, patch } of changes) await change(trx, log, scope, { row, patch, reason });
    const readings = changes.flatMap(({ row }) =>
      row.state === 'valid' || row.state === 'flagged' ? [{ id: row.id, was: row.state }] : [],
    );
    const body: StopReadings = { ...found, decisions: [...found.decisions, { ...said, readings }] };
    const saved = await saveCatalogRow(
      trx,
      scope,
      { kind: 'stop-readings', id: found.outId, body: JSON.stringify(body) },
      input.expectedVersion,
    );
    if (!saved) throw new ConflictError('These readings', said, before);
    log.row('catalog', saved, reason);
    return { version: saved.version, changed: changes.length };
  });
}

/** What was said before, or the stretch that the stop itself gives: later controls do not move it once something was said. */
export async function findStopReadings(db: Db, scope: SiteScope, outId: string): Promise<StopReadings> {
  const entry = await findCatalogEntry(db, scope, 'stop-readings', outId);
  if (entry) return entry.body;
  const control = await findControl(db, scope, outId);
  if (!control) throw new AppError('READING_NOT_FOUND', 'There is no such control in this practice.');
  const { stops } = await readStops(db, scope, control.meterId);
  const stop = stops.find(({ out }) => out[0].control.id === outId);
  if (!stop) throw new AppError('INPUT_INVALID', 'outId: no stop begins with this control');
  const { meterId, lotId, lastInLine, out } = stop;
  return { outId, meterId, lotId, from: lastInLine?.control.takenAt ?? null, until: control.takenAt, says: out[0].says, decisions: [] };
}

interface Change {
  readonly row: ReadingBefore;
  readonly patch: Pick<ReadingTable, 'state' | 'reasons'>;
}

type Said = Pick<ReadingsDecision, 'by' | 'reason'>;

/** In the words of the condition that says the same on the page. */
const questionWords = ({ by, reason }: Said, { says }: StopReadings): string =>
  `a later control was out of limits, and ${by} put this reading under question: ${reason} (${says})`;

function putUnderQuestion(rows: readonly ReadingBefore[], said: Said, stop: StopReadings): readonly Change[] {
  return rows
    .filter(({ state }) => state !== 'void')
    .map((row) => ({ row, patch: { state: 'void', reasons: JSON.stringify([...JSON.parse(row.reasons), questionWords(said, stop)]) } }));
}

function broughtBack(rows: readonly ReadingBefore[], stop: StopReadings): readonly Change[] {
  const last = stop.decisions.at(-1);
  if (last?.decision !== 'under-question') return [];
  const was = new Map(last.readings.map((reading) => [reading.id, reading.was]));
  const words = questionWords(last, stop);
  return rows.flatMap((row): Change[] => {
    const state = was.get(row.id);
    const reasons: readonly string[] = JSON.parse(row.reasons);
    // A reading that was corrected since, or made void for another reason, is left alone.
    if (state === undefined || row.state !== 'void' || !reasons.includes(words)) return [];
    return [{ row, patch: { state, reasons: JSON.stringify(reasons.filter((one) => one !== words)) } }];
  });
}

async function change(trx: Db, log: ChangeLog, scope: SiteScope, { row, patch, reason }: Change & { readonly reason: string }) {
  const updated = await updateRow(trx, scope, 'reading', row, patch);
  if (!updated) throw new ConflictError('A reading', patch, row);
  log.row('reading', updated, reason);
}
