import { randomBytes } from 'node:crypto';
import type { FastifyRequest } from 'fastify';
import { v7 as newUuid } from 'uuid';
import type { ActionContext } from '../actions/context.ts';
import { AppError } from '../api/errors.ts';
import { findSession } from '../store/read/accounts.ts';
import type { Db } from '../store/schema.ts';
import { findMemberScope } from '../store/siteScope.ts';
import { sessionToken, tokenDigest } from './sessions.ts';

export interface ServerDeps {
  readonly db: Db;
  readonly now: () => string;
}

/** A session and who it belongs to, from the cookie alone. */
export interface Signed {
  readonly context: ActionContext;
  readonly sessionId: string;
  readonly isHidden: boolean;
  /** UTC. */
  readonly since: string;
}

/** Undefined when nobody is signed in. */
export type FindSigned = (req: FastifyRequest) => Promise<Signed | undefined>;
/** Everything that an action needs. @throws AppError NOT_SIGNED_IN, SESSION_HIDDEN, MEMBER_CHANGED */
export type ContextOf = (req: FastifyRequest) => Promise<ActionContext>;

/** Whom the page believes to be here. Another tab may have changed the member since: then nothing is done in the wrong name. */
export const MEMBER_HEADER = 'x-ebbline-member';

export function buildRequestContext({ db, now }: ServerDeps): { findSigned: FindSigned; contextOf: ContextOf } {
  const findSigned: FindSigned = async (req) => {
    const token = sessionToken(req);
    if (token === undefined) return undefined;
    const sessionId = tokenDigest(token);
    const session = await findSession(db, sessionId, now());
    const member = session && (await findMemberScope(db, session));
    if (!member) return undefined;
    const context = { db, scope: member.scope, now, actor: member.member, newId: newUuid, random: randomBytes };
    return { context, sessionId, isHidden: session.lockedAt !== null, since: session.createdAt };
  };
  const contextOf: ContextOf = async (req) => {
    const signed = await findSigned(req);
    if (!signed) throw new AppError('NOT_SIGNED_IN', 'Sign in first.');
    if (signed.isHidden) throw new AppError('SESSION_HIDDEN', 'The screen is hidden.');
    const believed = req.headers[MEMBER_HEADER];
    if (believed !== undefined && believed !== signed.context.actor.memberId)
      throw new AppError('MEMBER_CHANGED', `${signed.context.actor.name} is here now.`);
    return signed.context;
  };
  return { findSigned, contextOf };
}
