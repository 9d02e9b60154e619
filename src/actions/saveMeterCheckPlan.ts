import { AppError } from '../api/errors.ts';
import type { MeterCheckPlan } from '../core/checks/meterCheck.ts';
import type { ActionContext } from './context.ts';
import { requireMeter } from './requireSupplies.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface SaveMeterCheckPlanInput {
  readonly plan: MeterCheckPlan;
  /** Version last seen, 0 for the first of a meter. */
  readonly expectedVersion: number;
}

/** How often a meter is checked, and the limits that stand on its check device. @throws AppError METER_NOT_FOUND, INPUT_INVALID */
export async function saveMeterCheckPlan(
  context: ActionContext,
  { plan, expectedVersion }: SaveMeterCheckPlanInput,
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveMeterCheckPlan');
  await requireMeter(context.db, context.scope, plan.meterId);
  if (!(Number.isInteger(plan.everyDays) && plan.everyDays >= 1))
    throw new AppError('INPUT_INVALID', 'everyDays: must be a whole number, 1 or more');
  if (plan.limits && !(plan.limits.lowRlu >= 0 && plan.limits.highRlu > plan.limits.lowRlu))
    throw new AppError('INPUT_INVALID', 'limits.highRlu: must be above limits.lowRlu');
  return saveCatalogEntry(context, 'saveMeterCheckPlan', { kind: 'meter-check-plan', id: plan.meterId, body: plan, expectedVersion });
}
