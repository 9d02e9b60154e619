import { AppError } from '../api/errors.ts';
import type { ControlNote } from '../core/checks/control.ts';
import { boundOnMeter } from '../core/reading/boundOnMeter.ts';
import type { Bound } from '../core/reading/types.ts';
import { insertRows } from '../store/write/rows.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireLot, requireMeter, requireNumberOf, requirePastTime } from './requireSupplies.ts';
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
  readonly note?: ControlNote | undefined;
}

/**
 * Notes what the control solution read. Every number is taken, in line or not; a mistake is made void afterwards, with its reason.
 * @throws AppError METER_NOT_FOUND, LOT_NOT_FOUND, INPUT_INVALID
 */
export async function recordControl(context: ActionContext, input: RecordControlInput): Promise<{ id: string }> {
  const { scope, actor, now, newId } = context;
  requireRight(actor, 'recordControl');
  const { meterId, lotId, rlu, note = {} } = input;
  const takenAt = requirePastTime(now(), input.takenAt);
  const operator = input.operator === undefined ? actor.name : requireText('operator', input.operator);
  requireTemperature(note);
  return inTransaction(context, 'recordControl', async (trx, log) => {
    const meter = await requireMeter(trx, scope, meterId);
    await requireLot(trx, scope, lotId);
    requireNumberOf(meter, rlu);
    const row = {
      ...({ id: newId(), use: 'control', patientId: null, visitId: null, studyId: null } as const),
      ...{ meterId, lotId, operator, activatedAt: null, takenAt, rlu, bound: boundOnMeter(rlu, input.bound, meter) },
      ...({ state: 'valid', reasons: '[]', swab: JSON.stringify(note) } as const),
    };
    log.rows('reading', await insertRows(trx, scope, 'reading', [row]));
    return { id: row.id };
  });
}

const COLDEST_DEG_C = -30;
const WARMEST_DEG_C = 60;

function requireTemperature({ temperatureDegC }: ControlNote): void {
  if (temperatureDegC === undefined || (temperatureDegC >= COLDEST_DEG_C && temperatureDegC <= WARMEST_DEG_C)) return;
  throw new AppError('INPUT_INVALID', `temperatureDegC: must lie between ${COLDEST_DEG_C} and ${WARMEST_DEG_C}, in degrees Celsius`);
}
