import { AppError } from '../api/errors.ts';
import { hideAfterMinutes } from '../content/practiceDefaults.ts';
import { ConflictError } from '../store/errors.ts';
import { findSite } from '../store/read/sites.ts';
import type { StoredSettings } from '../store/storedJson.ts';
import { updateSettings } from '../store/write/sites.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

/** After how many minutes without a key the screen hides. */
export async function saveHideAfter(
  context: ActionContext,
  { minutes, expectedVersion }: { readonly minutes: number; readonly expectedVersion: number },
): Promise<{ version: number }> {
  const { scope, actor } = context;
  requireRight(actor, 'saveSettings');
  const { least, most } = hideAfterMinutes;
  if (!(Number.isInteger(minutes) && minutes >= least && minutes <= most))
    throw new AppError('INPUT_INVALID', `minutes: must be a whole number from ${least} to ${most}`);
  return inTransaction(context, 'saveSettings', async (trx, log) => {
    const site = await findSite(trx, scope);
    if (!site) throw new AppError('SITE_NOT_FOUND', 'There is no such practice.');
    const stored: StoredSettings = JSON.parse(site.settings);
    const row = await updateSettings(trx, scope, JSON.stringify({ ...stored, hideAfterMinutes: minutes }), expectedVersion);
    if (!row) throw new ConflictError('The settings', minutes, stored.hideAfterMinutes ?? null);
    log.row('site', row);
    return { version: row.version };
  });
}
