import { randomBytes } from 'node:crypto';
import { append } from '../store/chain.ts';
import { requireText } from './checks.ts';
import type { ActionContext } from './context.ts';
import { requireRight } from './rights.ts';

/** Accesses after which a signature is out of the house. */
export const PRINTS: readonly string[] = ['print-leaflet', 'print-prescriptions'];

export interface LogAccessInput {
  /** What was done, e.g. "open-record", "print-leaflet", "sign-in". */
  readonly action: string;
  readonly entity: { readonly table: 'patient' | 'visit' | 'member'; readonly id: string };
  readonly reason?: string;
}

/** Adds who looked at what to the stream of accesses. */
export async function logAccess(context: ActionContext, { action, entity, reason }: LogAccessInput): Promise<void> {
  const { db, scope, actor, now, random = randomBytes } = context;
  requireRight(actor, 'logAccess');
  const change = { at: now(), member: actor.memberId, action: requireText('The action', action), entity, reason: reason ?? null, body: {} };
  await db.transaction().execute((trx) => append(trx, scope, 'access', [change], random));
}
