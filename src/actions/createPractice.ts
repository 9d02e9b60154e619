import type { Role } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import type { PracticeFile } from '../core/visit/types.ts';
import { startChain } from '../store/chain.ts';
import { listSites } from '../store/read/sites.ts';
import type { Db } from '../store/schema.ts';
import { type SiteScope, scopeOfSite } from '../store/siteScope.ts';
import type { StoredSettings } from '../store/storedJson.ts';
import { type NewCatalogEntry, saveCatalogRow } from '../store/write/catalog.ts';
import { insertRows } from '../store/write/rows.ts';
import { insertSite } from '../store/write/sites.ts';
import { requireText } from './checks.ts';
import { type ActionContext, inTransaction } from './context.ts';
import { hasRole } from './rights.ts';

export interface CreatePracticeInput {
  readonly practice: PracticeFile;
  /** e.g. "en-US". */
  readonly locale: string;
  readonly firstMember: { readonly name: string; readonly roles: readonly Role[]; readonly trainedSwab?: boolean };
}

/** There is no member yet when the first practice of a store is made; a further one takes a lead of a practice that is there. */
export type FoundingContext = Pick<ActionContext, 'db' | 'now' | 'newId' | 'random'> & { readonly actor?: ActionContext['actor'] };

/** A site with its first member, who must be a lead, and its meters, lots and shelf. */
export async function createPractice(
  context: FoundingContext,
  { practice, locale, firstMember }: CreatePracticeInput,
): Promise<{ siteId: string; memberId: string; scope: SiteScope }> {
  const { db, now, newId, actor } = context;
  await requireFounder(db, actor);
  if (!firstMember.roles.includes('lead')) throw new AppError('INPUT_INVALID', 'The first member must be a lead.');
  const siteId = newId();
  const memberId = newId();
  const scope = scopeOfSite(siteId);
  const settings: StoredSettings = { invented: practice.invented, settings: practice.settings };
  const founding = { db, scope, now, actor: { memberId }, ...(context.random ? { random: context.random } : {}) };
  await inTransaction(founding, 'createPractice', async (trx, log) => {
    const name = requireText('The name of the practice', practice.name);
    const timeZone = requireTimeZone(practice.timeZone);
    log.row('site', await insertSite(trx, { siteId, name, timeZone, locale, settings: JSON.stringify(settings) }));
    await startChain(trx, siteId);
    const member = {
      id: memberId,
      accountId: null,
      name: requireText('The name of the first member', firstMember.name),
      roles: JSON.stringify(firstMember.roles),
      trainedSwab: firstMember.trainedSwab === true ? 1 : 0,
      active: 1,
    };
    log.rows('member', await insertRows(trx, scope, 'member', [member]));
    for (const entry of catalogOf(practice)) {
      const row = await saveCatalogRow(trx, scope, entry, 0);
      if (!row) throw new AppError('INPUT_INVALID', `Two entries of the kind ${entry.kind} have the id ${entry.id}.`);
      log.row('catalog', row);
    }
  });
  return { siteId, memberId, scope };
}

async function requireFounder(db: Db, actor: ActionContext['actor'] | undefined): Promise<void> {
  if (actor && hasRole(actor, 'lead')) return;
  if ((await listSites(db)).length > 0)
    throw new AppError('NOT_ALLOWED', 'There is a practice already; only a lead of it may add another.');
}

function requireTimeZone(timeZone: string): string {
  try {
    return new Intl.DateTimeFormat('en', { timeZone }).resolvedOptions().timeZone && timeZone;
  } catch (cause) {
    throw new AppError('INPUT_INVALID', `There is no time zone ${timeZone}.`, { cause });
  }
}

function catalogOf({ meters, lots, shelf }: PracticeFile): NewCatalogEntry[] {
  const entries = (kind: NewCatalogEntry['kind'], bodies: readonly { readonly id: string }[]) =>
    bodies.map((body) => ({ kind, id: body.id, body: JSON.stringify(body) }));
  return [...entries('meter', meters), ...entries('lot', lots), ...entries('shelf-item', shelf)];
}
