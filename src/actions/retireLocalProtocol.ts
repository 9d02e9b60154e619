import { AppError } from '../api/errors.ts';
import { findCatalogEntry } from '../store/read/catalog.ts';
import { requireDate, requireReason } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';
import { saveCatalogEntry } from './saveCatalogEntry.ts';

export interface RetireLocalProtocolInput {
  readonly id: string;
  readonly reason: string;
  /** Local date: from this day on it does not hold. */
  readonly on: string;
  /** Version last seen. */
  readonly expectedVersion: number;
}

/** From a day on the protocol holds no more. It is kept, and so is what was signed under it. */
export async function retireLocalProtocol(
  context: ActionContext,
  { id, reason, on, expectedVersion }: RetireLocalProtocolInput,
): Promise<{ version: number }> {
  const { db, scope, actor } = context;
  requireRight(actor, 'retireLocalProtocol');
  const protocol = (await findCatalogEntry(db, scope, 'local-protocol', id))?.body;
  if (!protocol) throw new AppError('LOCAL_PROTOCOL_NOT_FOUND', 'There is no such protocol of this practice.');
  if (protocol.retired) throw new AppError('CONFLICT', `${protocol.name} was retired by ${protocol.retired.by} already.`);
  const retired = { on: requireDate('The last day', on), by: actor.name, reason: requireReason(reason) };
  const body = { ...protocol, retired };
  return saveCatalogEntry(context, 'retireLocalProtocol', { kind: 'local-protocol', id, body, expectedVersion });
}
