import type { ActionContext } from '../../actions/context.ts';
import { requireMeter } from '../../actions/requireSupplies.ts';
import { AppError } from '../../api/errors.ts';
import { type LocalCutoffStudy, localCutoffStudy } from '../../core/meter/localCutoffStudy.ts';
import { seededUniform } from '../../core/stats/seededUniform.ts';
import { listFollowedReadings } from '../../store/read/followedReadings.ts';
import { findSite } from '../../store/read/sites.ts';
import { localDateAt } from '../siteClock.ts';

/** Fixed, so that the same record always gives the same interval. */
const SEED = 20_261_126;

/** The practice's readings on one meter against the new lesions that it recorded. Reads only, of the whole practice, and names nobody. */
export async function readCutoffStudy(
  { db, scope }: Pick<ActionContext, 'db' | 'scope'>,
  { meterId, withinMonths }: { readonly meterId: string; readonly withinMonths: number },
): Promise<LocalCutoffStudy> {
  const site = await findSite(db, scope);
  if (!site) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');
  const meter = await requireMeter(db, scope, meterId);
  const readings = await listFollowedReadings(db, scope, { meterId, onDateOf: (utc) => localDateAt(utc, site.timeZone) });
  return localCutoffStudy({ readings, withinMonths, cutoffRlu: meter.cutoffRlu, random: seededUniform(SEED) });
}
