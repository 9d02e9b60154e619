import { AppError } from '../api/errors.ts';
import type { StopDone, StopResolution } from '../core/checks/control.ts';
import type { JudgedControl } from '../core/checks/judgeControls.ts';
import type { ControlStop } from '../core/checks/listStops.ts';
import { findControl } from '../store/read/checks.ts';
import type { Db } from '../store/schema.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { requireText } from './checks.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { idsOfStop, isShownInLine, readStops } from './readStops.ts';
import { requireRight } from './rights.ts';

export interface ResolveStopInput {
  /** A control out of limits of the stop. */
  readonly outId: string;
  /** The control in line that shows it; absent = the one that ended the stop. */
  readonly controlId?: string | undefined;
  readonly did: StopDone;
}

/**
 * Notes what was done about a stop, once a control is in line again; or, where another lot was opened, once a control of that lot is.
 * @returns the record that holds; where somebody noted it before, that one
 * @throws AppError READING_NOT_FOUND, INPUT_INVALID
 */
export async function resolveStop(context: ActionContext, { outId, controlId, did }: ResolveStopInput): Promise<StopResolution> {
  const { scope, actor } = context;
  requireRight(actor, 'resolveStop');
  const done = requireDone(did);
  return inTransaction(context, 'resolveStop', async (trx, log) => {
    const control = await findControl(trx, scope, outId);
    if (!control) throw new AppError('READING_NOT_FOUND', 'There is no such control in this practice.');
    const { stops, judged } = await readStops(trx, scope, control.meterId);
    const stop = stops.find((one) => idsOfStop(one).includes(outId));
    if (!stop) throw new AppError('INPUT_INVALID', 'outId: this control stops nothing: it is in line, or void.');
    if (stop.resolution) return stop.resolution;
    const shown = controlId ?? stop.endedBy?.control.id;
    if (shown === undefined) throw new AppError('INPUT_INVALID', 'controlId: no control is in line again yet; take one first.');
    requireInLineAfter(stop, judged, shown, done);
    return writeResolution(trx, log, context, { stop, controlId: shown, did: done });
  });
}

/** @throws AppError INPUT_INVALID */
export function requireDone({ answer, note }: StopDone): StopDone {
  if (note !== undefined && note.trim() !== '') return { answer, note: requireText('did.note', note, 500) };
  if (answer === 'other') throw new AppError('INPUT_INVALID', 'did.note: say in a few words what was done');
  return { answer };
}

interface Resolving {
  readonly stop: ControlStop;
  readonly controlId: string;
  readonly did: StopDone;
}

export async function writeResolution(trx: Db, log: ChangeLog, context: ActionContext, resolving: Resolving): Promise<StopResolution> {
  const { scope, actor, now } = context;
  const { stop, controlId, did } = resolving;
  const { meterId, lotId } = stop;
  const body: StopResolution = { outIds: idsOfStop(stop), meterId, lotId, controlId, ...did, by: actor.name, at: now() };
  // A record whose control was made void stays; the next one has another id.
  const id = `${stop.out[0].control.id}/${controlId}`;
  const row = await saveCatalogRow(trx, scope, { kind: 'stop-resolved', id, body: JSON.stringify(body) }, 0);
  if (row) log.row('catalog', row, did.note ?? did.answer);
  return body;
}

function requireInLineAfter(stop: ControlStop, judged: readonly JudgedControl[], controlId: string, did: StopDone): void {
  const control = isShownInLine(judged, controlId) ? judged.find((one) => one.control.id === controlId)?.control : undefined;
  if (!control || control.takenAt <= stop.out[0].control.takenAt)
    throw new AppError('INPUT_INVALID', 'controlId: must be a control of this meter in line, taken after the one out of limits');
  if (control.lotId !== stop.lotId && did.answer !== 'new-lot')
    throw new AppError('INPUT_INVALID', 'controlId: a control of another lot shows something only where that lot was opened in its place');
}
