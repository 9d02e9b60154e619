import { AppError } from '../api/errors.ts';
import { numberProblems } from '../core/reading/checkReading.ts';
import type { Meter } from '../core/reading/types.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';
import { requireUtc } from './checks.ts';

/** @throws AppError METER_NOT_FOUND */
export async function requireMeter(db: Db, scope: SiteScope, meterId: string): Promise<Meter> {
  const meter = (await findCatalogEntry(db, scope, 'meter', meterId))?.body;
  if (!meter) throw new AppError('METER_NOT_FOUND', `There is no meter ${meterId} in this practice.`);
  return meter;
}

/** @throws AppError LOT_NOT_FOUND */
export async function requireLot(db: Db, scope: SiteScope, lotId: string): Promise<void> {
  if (!(await findCatalogEntry(db, scope, 'lot', lotId))) throw new AppError('LOT_NOT_FOUND', `There is no swab lot ${lotId}.`);
}

/** A number that this meter can show. @throws AppError INPUT_INVALID, naming the field */
export function requireNumberOf(meter: Meter, rlu: number): void {
  const problem = numberProblems({ rlu }, meter)[0];
  if (problem) throw new AppError('INPUT_INVALID', `${problem.field}: ${problem.message}`);
  // Everything here is computed on the logarithm.
  if (rlu === 0) throw new AppError('INPUT_INVALID', 'rlu: 0 has no logarithm; type the lowest number of the meter with "or less"');
}

/** Clocks of a tablet and a server differ. */
const CLOCK_SLACK_MS = 5 * 60_000;

/** When something was read, as UTC; now where nothing was said. @throws AppError INPUT_INVALID for a time still to come */
export function requirePastTime(now: string, takenAt: string | undefined): string {
  if (takenAt === undefined) return now;
  const at = requireUtc('takenAt', takenAt);
  if (Date.parse(at) > Date.parse(now) + CLOCK_SLACK_MS) throw new AppError('INPUT_INVALID', `takenAt: ${at} is in the future`);
  return at;
}

const COLDEST_DEG_C = -30;
const WARMEST_DEG_C = 60;

/** @throws AppError INPUT_INVALID */
export function requireTemperature({ temperatureDegC }: { readonly temperatureDegC?: number | undefined }): void {
  if (temperatureDegC === undefined || (temperatureDegC >= COLDEST_DEG_C && temperatureDegC <= WARMEST_DEG_C)) return;
  throw new AppError('INPUT_INVALID', `temperatureDegC: must lie between ${COLDEST_DEG_C} and ${WARMEST_DEG_C}, in degrees Celsius`);
}
