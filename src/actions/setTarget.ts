import { AppError } from '../api/errors.ts';
import type { ControlPlan, ControlTarget, PastTarget } from '../core/checks/control.ts';
import { logSdOfCv } from '../core/reading/logSdOfCv.ts';
import { ConflictError } from '../store/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { readJudged } from './readStops.ts';
import { requireLot, requireMeter, requireNumberOf } from './requireSupplies.ts';
import { requireRight } from './rights.ts';

export interface SetTargetInput {
  readonly meterId: string;
  readonly lotId: string;
  /** What the control solution is expected to read with this lot. */
  readonly meanRlu: number;
  /** Its spread, fraction above 0 up to 1. */
  readonly cv: number;
  readonly reason: string;
  /** Version of the plan last seen. */
  readonly expectedVersion: number;
}

const WIDEST_CV = 1;

/**
 * Sets by hand what the controls of a lot are held against from now on. The target before it is kept, and the controls of its time stay
 * held against it: nothing that was in line or out becomes something else.
 * @throws AppError NOT_ALLOWED, REASON_REQUIRED, METER_NOT_FOUND, LOT_NOT_FOUND, INPUT_INVALID; ConflictError
 */
export async function setTarget(context: ActionContext, input: SetTargetInput): Promise<{ version: number }> {
  const { scope, actor, now } = context;
  requireRight(actor, 'setTarget');
  const reason = requireReason(input.reason);
  const { meterId, lotId, meanRlu, cv, expectedVersion } = input;
  if (!(cv > 0 && cv <= WIDEST_CV)) throw new AppError('INPUT_INVALID', 'cv: must be above 0 and 100 % at most');
  return inTransaction(context, 'setTarget', async (trx, log) => {
    requireNumberOf(await requireMeter(trx, scope, meterId), meanRlu);
    await requireLot(trx, scope, lotId);
    const entry = await findCatalogEntry(trx, scope, 'control-plan', meterId);
    if (!entry) throw new AppError('INPUT_INVALID', 'meterId: this meter has no control plan yet; make one first');
    const at = now();
    const judged = (await readJudged(trx, scope, meterId)).find((lot) => lot.lotId === lotId);
    const target = { meanLn: Math.log(meanRlu), sdLn: logSdOfCv(cv), set: { by: actor.name, reason } };
    const plan = replaceTarget(entry.body, { lotId, ...target, count: 0, from: 'hand', since: at }, judged?.target);
    const row = await saveCatalogRow(trx, scope, { kind: 'control-plan', id: meterId, body: JSON.stringify(plan) }, expectedVersion);
    if (!row) throw new ConflictError('This control plan', target, entry);
    log.row('catalog', row, reason);
    return { version: row.version };
  });
}

/** @param held  what the lot's controls are held against until now: in the plan, or made by its first controls */
function replaceTarget(plan: ControlPlan, next: ControlTarget & { readonly since: string }, held: ControlTarget | undefined): ControlPlan {
  const planned = plan.targets.find(({ lotId }) => lotId === next.lotId);
  const before = planned ?? held;
  const past: PastTarget[] = before ? [{ ...before, until: next.since, ...(planned ? {} : { isFromItsFirst: true }) }] : [];
  const targets = [...plan.targets.filter((target) => target !== planned), next];
  return { ...plan, targets, pastTargets: [...(plan.pastTargets ?? []), ...past] };
}
