import { AppError } from '../api/errors.ts';
import { disagreements } from '../content/disagreements.ts';
import type { PracticeSettings } from '../core/visit/types.ts';
import { ConflictError } from '../store/errors.ts';
import { findSite } from '../store/read/sites.ts';
import type { StoredSettings } from '../store/storedJson.ts';
import { updateSettings } from '../store/write/sites.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

export interface SaveSettingsInput {
  /** The settings to change; the others stay. */
  readonly settings: Partial<PracticeSettings>;
  /** Version of the practice as it was read. */
  readonly expectedVersion: number;
}

export async function saveSettings(context: ActionContext, { settings, expectedVersion }: SaveSettingsInput): Promise<{ version: number }> {
  const { scope, actor } = context;
  requireRight(actor, 'saveSettings');
  requirePositions(settings.disagreements);
  return inTransaction(context, 'saveSettings', async (trx, log) => {
    const site = await findSite(trx, scope);
    if (!site) throw new AppError('SITE_NOT_FOUND', 'There is no such practice.');
    const stored: StoredSettings = JSON.parse(site.settings);
    const next: StoredSettings = { ...stored, settings: { ...stored.settings, ...settings } };
    const row = await updateSettings(trx, scope, JSON.stringify(next), expectedVersion);
    if (!row) throw new ConflictError('The settings', settings, stored.settings);
    log.row('site', row);
    return { version: row.version };
  });
}

/** Only positions that this edition knows: another would silently count for nothing. */
function requirePositions(chosen: PracticeSettings['disagreements'] = {}): void {
  for (const [id, position] of Object.entries(chosen)) {
    const found = disagreements.find((d) => d.id === id && d.kind === 'setting');
    const known = found?.positions.map((p) => p.id);
    if (!known) throw new AppError('INPUT_INVALID', `settings.disagreements: there is nothing to choose under "${id}".`);
    if (!known.includes(position))
      throw new AppError('INPUT_INVALID', `settings.disagreements.${id}: must be one of ${known.join(', ')}, not "${position}".`);
  }
}
