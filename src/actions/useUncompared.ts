import { AppError } from '../api/errors.ts';
import { lotStanding } from '../core/checks/lotStanding.ts';
import type { SwabLot } from '../core/reading/types.ts';
import { ConflictError } from '../store/errors.ts';
import { listCatalog } from '../store/read/catalog.ts';
import { saveCatalogRow } from '../store/write/catalog.ts';
import { requireReason } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { requireRight } from './rights.ts';

/**
 * A lot goes into use without a comparison, with a reason that stands on each of its readings until it is compared.
 * @returns the lot as it stands now; where somebody gave a reason before, with that one
 * @throws AppError REASON_REQUIRED, LOT_NOT_FOUND, INPUT_INVALID where it needs none; ConflictError
 */
export async function useUncompared(
  context: ActionContext,
  input: { readonly lotId: string; readonly reason: string },
): Promise<{ lot: SwabLot }> {
  const { scope, actor, now } = context;
  requireRight(actor, 'useUncompared');
  const reason = requireReason(input.reason);
  return inTransaction(context, 'useUncompared', async (trx, log) => {
    const entries = await listCatalog(trx, scope, 'lot');
    const entry = entries.find(({ id }) => id === input.lotId);
    if (!entry) throw new AppError('LOT_NOT_FOUND', `There is no swab lot ${input.lotId}.`);
    const standing = lotStanding(
      entry.body,
      entries.map(({ body }) => body),
    );
    if (standing === 'went-on') return { lot: entry.body };
    if (standing !== 'not-compared')
      throw new AppError('INPUT_INVALID', 'lotId: this lot needs no reason; it is the first one, or was compared');
    const lot: SwabLot = { ...entry.body, uncompared: { by: actor.name, at: now(), reason } };
    const row = await saveCatalogRow(trx, scope, { kind: 'lot', id: lot.id, body: JSON.stringify(lot) }, entry.version);
    if (!row) throw new ConflictError('This lot', lot, entry);
    log.row('catalog', row, reason);
    return { lot };
  });
}
