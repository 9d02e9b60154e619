import { AppError } from '../api/errors.ts';
import type { ControlPlan } from '../core/checks/control.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireMeter } from './requireSupplies.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface SaveControlPlanInput {
  readonly plan: ControlPlan;
  /** Version last seen, 0 for the first plan of a meter. */
  readonly expectedVersion: number;
}

/**
 * When this meter gets a control and by which rules; the first plan of a meter also says what controls are held against. From then on
 * targets are made by comparisons or set by hand (`setTarget`), so they stay as they are stored whatever is sent here.
 * @throws AppError METER_NOT_FOUND, INPUT_INVALID
 */
export async function saveControlPlan(
  context: ActionContext,
  { plan, expectedVersion }: SaveControlPlanInput,
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveControlPlan');
  await requireMeter(context.db, context.scope, plan.meterId);
  requireText('The name of the control solution', plan.solution.name);
  if (plan.rules.length === 0) throw new AppError('INPUT_INVALID', 'rules: a plan needs one control rule at least');
  const badTarget = plan.targets.findIndex(({ meanLn, sdLn }) => !(Number.isFinite(meanLn) && sdLn > 0));
  if (badTarget >= 0) throw new AppError('INPUT_INVALID', `targets.${badTarget}: needs a mean, and a spread above 0`);
  const stored = (await findCatalogEntry(context.db, context.scope, 'control-plan', plan.meterId))?.body;
  if (!stored && plan.targets.some(({ from }) => from === 'hand'))
    throw new AppError('INPUT_INVALID', 'targets: one by hand is set with its reason, once the plan is there');
  const { targets, pastTargets: _, ...rest } = plan;
  const kept: Pick<ControlPlan, 'targets' | 'pastTargets'> = stored ?? { targets };
  const body: ControlPlan = { ...rest, targets: kept.targets, ...(kept.pastTargets && { pastTargets: kept.pastTargets }) };
  return saveCatalogEntry(context, 'saveControlPlan', { kind: 'control-plan', id: plan.meterId, body, expectedVersion });
}
