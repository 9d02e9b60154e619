import type { ActionContext } from '../actions/context.ts';
import { AppError } from '../api/errors.ts';
import { findSite } from '../store/read/sites.ts';

/** Today where the practice is, as a local date. */
export async function localDate({ db, scope, now }: Pick<ActionContext, 'db' | 'scope' | 'now'>): Promise<string> {
  const site = await findSite(db, scope);
  if (!site) throw new AppError('SITE_NOT_FOUND', 'This practice is not in the data file.');
  return localDateAt(now(), site.timeZone);
}

/** The local date of a moment. Swedish writes dates the ISO way. */
export function localDateAt(isoTime: string, timeZone: string): string {
  return new Intl.DateTimeFormat('sv-SE', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(new Date(isoTime));
}
