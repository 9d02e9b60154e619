import { findNewestResultAt } from '../store/read/results.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/**
 * When a result counts as made. The newest of a visit is the one that holds, so a new one never stands before what is on record there,
 * also when the clock was set back in between.
 * @returns UTC, `now` or just after the newest result of the visit
 */
export async function resultTime(db: Db, scope: SiteScope, visitId: string, now: string): Promise<string> {
  const newest = await findNewestResultAt(db, scope, visitId);
  return newest === undefined || newest < now ? now : new Date(Date.parse(newest) + 1).toISOString();
}
