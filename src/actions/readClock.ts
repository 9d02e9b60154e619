import type { ClockView } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { findNewestChangeAt } from '../store/read/changes.ts';
import type { ActionContext } from './context.ts';

/** Two clocks of one network may differ by this much without anybody being wrong. */
const TOLERANCE_MS = 5 * 60_000;

/** Whether the computer's clock stands before the newest entry of the record: then it was set back, or was ahead when that was made. */
export async function readClock({ db, scope, now }: Pick<ActionContext, 'db' | 'scope' | 'now'>): Promise<ClockView> {
  const at = now();
  const newestAt = (await findNewestChangeAt(db, scope)) ?? null;
  return { now: at, newestAt, isBehind: newestAt !== null && Date.parse(at) < Date.parse(newestAt) - TOLERANCE_MS };
}

/**
 * A visit dated before earlier ones would carry nothing forward and stand in the wrong place for ever.
 * @throws AppError CLOCK_BACK
 */
export async function requireClock(context: Pick<ActionContext, 'db' | 'scope' | 'now'>): Promise<void> {
  const { now, newestAt, isBehind } = await readClock(context);
  if (!isBehind) return;
  throw new AppError(
    'CLOCK_BACK',
    `The clock of this computer says ${now}, but the newest entry on record is from ${newestAt}. Set it right first.`,
  );
}
