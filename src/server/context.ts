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

/** Who asks, from the session cookie alone, with everything that an action needs; undefined when nobody is signed in. */
export type FindContext = (req: FastifyRequest) => Promise<ActionContext | undefined>;
/** @throws AppError NOT_SIGNED_IN */
export type ContextOf = (req: FastifyRequest) => Promise<ActionContext>;

export function buildRequestContext({ db, now }: ServerDeps): { findContext: FindContext; contextOf: ContextOf } {
  const findContext: FindContext = async (req) => {
    const token = sessionToken(req);
    if (token === undefined) return undefined;
    const session = await findSession(db, tokenDigest(token), now());
    const signedIn = session && (await findMemberScope(db, session));
    if (!signedIn) return undefined;
    return { db, scope: signedIn.scope, now, actor: signedIn.member, newId: newUuid, random: randomBytes };
  };
  const contextOf: ContextOf = async (req) => {
    const context = await findContext(req);
    if (!context) throw new AppError('NOT_SIGNED_IN', 'Sign in first.');
    return context;
  };
  return { findContext, contextOf };
}
