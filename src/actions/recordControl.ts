import type { ControlNote, StopDone, StopResolution } from '../core/checks/control.ts';
import type { Bound } from '../core/reading/types.ts';
import type { Db } from '../store/schema.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireText } from './checks.ts';
import { type ActionContext, type ChangeLog, inTransaction } from './context.ts';
import { controlRow } from './controlRow.ts';
import { isShownInLine, readStops } from './readStops.ts';
import { requireLot, requireMeter, requireNumberOf, requirePastTime, requireTemperature } from './requireSupplies.ts';
import { requireDone, writeResolution } from './resolveStop.ts';
import { requireRight } from './rights.ts';

export interface RecordControlInput {
  readonly meterId: string;
  readonly lotId: string;
  readonly rlu: number;
  readonly bound?: Bound | undefined;
  /** Time with zone; absent = now. */
  readonly takenAt?: string | undefined;
  /** Name of whoever took it; absent = the member who is here. */
  readonly operator?: string | undefined;
  readonly note?: Omit<ControlNote, 'did'> | undefined;
  /** What was done before it, where readings are stopped; with a control in line it ends the stop. */
  readonly did?: StopDone | undefined;
}

/**
 * Notes what the control solution read. Every number is taken, in line or not; a mistake is made void afterwards, with its reason.
 * @returns its id, and the record of each stop that it ended
 * @throws AppError METER_NOT_FOUND, LOT_NOT_FOUND, INPUT_INVALID
 */
export async function recordControl(context: ActionContext, input: RecordControlInput): Promise<RecordedControl> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'recordControl');
  const { meterId, lotId, rlu } = input;
  const did = input.did && requireDone(input.did);
  const note: ControlNote = { ...input.note, ...(did && { did }) };
  const takenAt = requirePastTime(now(), input.takenAt);
  const operator = input.operator === undefined ? actor.name : requireText('operator', input.operator);
  requireTemperature(note);
  return inTransaction(context, 'recordControl', async (trx, log) => {
    const meter = await requireMeter(trx, scope, meterId);
    await requireLot(trx, scope, lotId);
    requireNumberOf(meter, rlu);
    const row = controlRow({ id: newId(), meter, lotId, operator, takenAt, rlu, bound: input.bound, note });
    log.rows('reading', await insertRows(trx, scope, 'reading', [row]));
    return { id: row.id, resolved: did ? await resolveWith(trx, log, context, { controlId: row.id, meterId, lotId, did }) : [] };
  });
}

export interface RecordedControl {
  readonly id: string;
  readonly resolved: readonly StopResolution[];
}

interface Shown {
  readonly controlId: string;
  readonly meterId: string;
  readonly lotId: string;
  readonly did: StopDone;
}

/** Ends what this control shows to be over: stops of its own lot, and with a new lot opened, those of the lots before. */
async function resolveWith(trx: Db, log: ChangeLog, context: ActionContext, shown: Shown): Promise<readonly StopResolution[]> {
  const { controlId, meterId, lotId, did } = shown;
  const { stops, judged } = await readStops(trx, context.scope, meterId);
  if (!isShownInLine(judged, controlId)) return [];
  const ended = stops.filter((stop) => {
    if (stop.lotId === lotId) return stop.state === 'not-recorded' && stop.endedBy?.control.id === controlId;
    return did.answer === 'new-lot' && stop.state === 'stopped';
  });
  const written: StopResolution[] = [];
  for (const stop of ended) written.push(await writeResolution(trx, log, context, { stop, controlId, did }));
  return written;
}
