import { AppError } from '../api/errors.ts';
import { type CheckLimits, isWithinLimits, type MeterCheckBy, type MeterCheckNote } from '../core/checks/meterCheck.ts';
import { sayNumber, sayRlu } from '../core/reading/sayRlu.ts';
import type { Bound } from '../core/reading/types.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { controlRow } from './controlRow.ts';
import { requireMeter, requireNumberOf, requirePastTime, requireTemperature } from './requireSupplies.ts';
import { requireRight } from './rights.ts';

export interface RecordMeterCheckInput {
  readonly meterId: string;
  readonly checkedBy: MeterCheckBy;
  /** What the meter showed; absent where the check gives no number. */
  readonly rlu?: number | undefined;
  readonly bound?: Bound | undefined;
  /** Absent = by the number and the limits of the check device. */
  readonly passed?: boolean | undefined;
  /** Time with zone; absent = now. */
  readonly takenAt?: string | undefined;
  readonly temperatureDegC?: number | undefined;
  readonly words?: string | undefined;
}

/**
 * Notes that a meter itself was checked, and how it went. One that did not pass stops the meter with every lot until one passes.
 * @throws AppError METER_NOT_FOUND, INPUT_INVALID
 */
export async function recordMeterCheck(context: ActionContext, input: RecordMeterCheckInput): Promise<{ id: string; passed: boolean }> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'recordMeterCheck');
  const { meterId, rlu, temperatureDegC } = input;
  const takenAt = requirePastTime(now(), input.takenAt);
  const words = input.words === undefined ? undefined : requireText('words', input.words, 500);
  requireTemperature({ temperatureDegC });
  return inTransaction(context, 'recordMeterCheck', async (trx, log) => {
    const meter = await requireMeter(trx, scope, meterId);
    if (rlu !== undefined) requireNumberOf(meter, rlu);
    const limits = (await findCatalogEntry(trx, scope, 'meter-check-plan', meterId))?.body.limits;
    const note: MeterCheckNote = {
      checkedBy: input.checkedBy,
      ...outcomeOf(input, limits),
      ...(temperatureDegC !== undefined && { temperatureDegC }),
      ...(words !== undefined && { words }),
    };
    const row = controlRow({ id: newId(), meter, lotId: null, operator: actor.name, takenAt, rlu, bound: input.bound, note });
    log.rows('reading', await insertRows(trx, scope, 'reading', [row]));
    return { id: row.id, passed: note.passed };
  });
}

/** By number and limits where there are both; a member's word that says otherwise is asked back, not kept beside it. */
function outcomeOf(
  { rlu, checkedBy, passed }: RecordMeterCheckInput,
  limits: CheckLimits | undefined,
): Pick<MeterCheckNote, 'passed' | 'limits'> {
  const isWithin = isWithinLimits(rlu, checkedBy, limits);
  if (isWithin === undefined || limits === undefined || rlu === undefined) {
    if (passed === undefined)
      throw new AppError('INPUT_INVALID', 'passed: must be said where there is no number with limits to judge it by');
    return { passed };
  }
  if (passed !== undefined && passed !== isWithin) {
    const range = `${sayNumber(limits.lowRlu)} to ${sayNumber(limits.highRlu)}`;
    throw new AppError(
      'INPUT_INVALID',
      `passed: ${sayRlu(rlu)} lies ${isWithin ? 'within' : 'outside'} the limits of the device, ${range}`,
    );
  }
  return { passed: isWithin, limits };
}
