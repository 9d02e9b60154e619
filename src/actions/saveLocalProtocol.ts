import { AppError } from '../api/errors.ts';
import { content } from '../content/allContent.ts';
import { settleTables } from '../core/regimen/disagreement/settleTables.ts';
import { checkLocalProtocol } from '../core/regimen/local/checkLocalProtocol.ts';
import type { LocalProtocol } from '../core/regimen/local/localProtocol.ts';
import { findPractice } from '../store/read/sites.ts';
import { requireDate, requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export type NewLocalProtocol = Omit<LocalProtocol, 'id' | 'author' | 'retired'>;

/**
 * A dentist writes the practice's own protocol. It is signed by being written, and never changed afterwards: who wants another one writes
 * it and retires this one.
 * @throws AppError NOT_ALLOWED, INPUT_INVALID naming the field
 */
export async function saveLocalProtocol(
  context: ActionContext,
  { id, protocol }: { readonly id: string; readonly protocol: NewLocalProtocol },
): Promise<{ version: number }> {
  requireRight(context.actor, 'saveLocalProtocol');
  const name = requireText('The name of the protocol', protocol.name);
  requireDate('The date of the protocol', protocol.date);
  const body: LocalProtocol = { ...protocol, name, id, author: context.actor.name };
  const [problem] = checkLocalProtocol(body, settleTables(content.regimen, await chosenPositions(context)));
  if (problem) throw new AppError('INPUT_INVALID', `${problem.field}: ${problem.says}`);
  return saveCatalogEntry(context, 'saveLocalProtocol', { kind: 'local-protocol', id, body, expectedVersion: 0 });
}

/** What is never proposed by itself depends on what the practice chose where sources disagree. */
const chosenPositions = async ({ db, scope }: ActionContext) => (await findPractice(db, scope))?.practice.settings.disagreements;
