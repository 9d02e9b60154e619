import { AppError } from '../api/errors.ts';
import type { Control, StopOverride } from '../core/checks/control.ts';
import { findLastCheck } from '../core/checks/meterCheck.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { findControl, overrideIdOf } from '../store/read/checks.ts';
import { findMeterCheck, listMeterChecks } from '../store/read/meterChecks.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { requireDate, requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { readJudged } from './readStops.ts';
import { requireRight } from './rights.ts';

export interface OverrideStopInput {
  /** The control that is out of limits, or the check of the meter that did not pass, as it was seen on the page. */
  readonly controlId: string;
  /** Local date of today. */
  readonly onDate: string;
  readonly reason: string;
}

/**
 * Lets readings of one meter and lot count today although this control is out of limits. It answers that one control: the next one that
 * is out, and the next day, stop again. Each reading taken under it carries the name and the reason.
 * @returns the override that holds; where somebody gave one before, that one
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, READING_NOT_FOUND, INPUT_INVALID
 */
export async function overrideStop(context: ActionContext, input: OverrideStopInput): Promise<StopOverride> {
  const { scope, actor, now } = context;
  requireRight(actor, 'overrideStop');
  const reason = requireReason(input.reason);
  const onDate = requireDate('onDate', input.onDate);
  return inTransaction(context, 'overrideStop', async (trx, log) => {
    const control: StopOf | undefined =
      (await findControl(trx, scope, input.controlId)) ?? (await findMeterCheck(trx, scope, input.controlId));
    if (!control) throw new AppError('READING_NOT_FOUND', 'There is no such control in this practice.');
    const id = overrideIdOf({ onDate, controlId: control.id });
    const before = await findCatalogEntry(trx, scope, 'stop-override', id);
    if (before) return before.body;
    const { meterId, lotId } = control;
    await (lotId === undefined ? requireStoppedByCheck(trx, scope, control) : requireStopped(trx, scope, { ...control, lotId }));
    const body: StopOverride = { controlId: control.id, meterId, lotId, onDate, by: actor.name, at: now(), reason };
    const row = await saveCatalogRow(trx, scope, { kind: 'stop-override', id, body: JSON.stringify(body) }, 0);
    if (row) log.row('catalog', row, reason);
    return body;
  });
}

/** A control of a lot, or a check of the meter itself, which is of no lot. */
type StopOf = Pick<Control, 'id' | 'meterId'> & { readonly lotId?: string | undefined };

async function requireStoppedByCheck(trx: Db, scope: SiteScope, { id, meterId }: StopOf): Promise<void> {
  const last = findLastCheck(await listMeterChecks(trx, scope, { meterId }), meterId);
  if (last?.id !== id || last.note.passed)
    throw new AppError('INPUT_INVALID', 'This check stops nothing: it passed, is void, or another came after it.');
}

/** Only the newest control of its meter and lot stops anything, and only while it is out of limits. */
async function requireStopped(trx: Db, scope: SiteScope, { id, meterId, lotId }: Pick<Control, 'id' | 'meterId' | 'lotId'>): Promise<void> {
  const lots = await readJudged(trx, scope, meterId);
  const newest = lots.find((lot) => lot.lotId === lotId)?.controls.findLast(({ state }) => state !== 'void');
  if (newest?.control.id !== id || newest.state !== 'out')
    throw new AppError('INPUT_INVALID', 'This control stops nothing: it is in line, void, or another came after it.');
}
