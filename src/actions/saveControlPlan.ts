import { AppError } from '../api/errors.ts';
import type { ControlPlan } from '../core/checks/control.ts';
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

/** When this meter gets a control, by which rules, and what it is held against. @throws AppError METER_NOT_FOUND, INPUT_INVALID */
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
  return saveCatalogEntry(context, 'saveControlPlan', { kind: 'control-plan', id: plan.meterId, body: plan, expectedVersion });
}
