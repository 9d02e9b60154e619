import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { endSession, startSession } from '../actions/sessions.ts';
import { type Role, SignInBody } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { findMember, listMembers } from '../store/read/members.ts';
import { findPractice } from '../store/read/sites.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { FindContext, ServerDeps } from './context.ts';
import { checkPassword } from './passwords.ts';
import { newToken, SESSION_COOKIE, type SignInAddress, sessionEnd, sessionToken, setSessionCookie, tokenDigest } from './sessions.ts';
import { localDateAt } from './siteClock.ts';

export interface SignInOptions extends ServerDeps {
  readonly findContext: FindContext;
  /** The practice of this machine; only its members can sign in here. */
  readonly scope: SiteScope;
  readonly address: SignInAddress;
  /** The member whom the printed address signs in. */
  readonly firstMemberId: string;
}

const TRIES_PER_MINUTE = 10;

export const signInRoutes: FastifyPluginAsyncZod<SignInOptions> = async (app, { db, now, findContext, scope, address, firstMemberId }) => {
  const begin = async (memberId: string): Promise<string> => {
    const token = newToken();
    const accountId = (await findMember(db, scope, memberId))?.accountId ?? null;
    await startSession({ db, now }, { id: tokenDigest(token), accountId, siteId: scope.siteId, memberId, expiresAt: sessionEnd(now()) });
    return token;
  };

  const inventedName = async (): Promise<string | null> => {
    const practice = (await findPractice(db, scope))?.practice;
    return practice?.invented ? practice.name : null;
  };

  app.get('/sign-in/:token', { schema: { params: z.strictObject({ token: z.string().max(200) }) } }, async (req, reply) => {
    if (!address.use(req.params.token)) return reply.redirect('/sign-in');
    setSessionCookie(reply, await begin(firstMemberId));
    return reply.redirect('/');
  });

  // Signed out, only an invented practice says which one it is.
  app.get('/api/members', async () => ({
    inventedPractice: await inventedName(),
    members: (await listMembers(db, scope)).filter((m) => m.active).map(({ id, name, roles }) => ({ id, name, roles })),
  }));

  app.post(
    '/api/sign-in',
    { schema: { body: SignInBody }, config: { rateLimit: { max: TRIES_PER_MINUTE, timeWindow: '1 minute' } } },
    async (req, reply) => {
      const { memberId, password } = req.body;
      if (!(await checkPassword(db, scope, memberId, password)))
        throw new AppError('NOT_SIGNED_IN', 'password: this is not the password of this member.');
      setSessionCookie(reply, await begin(memberId));
      return { ok: true };
    },
  );

  app.post('/api/sign-out', async (req, reply) => {
    const token = sessionToken(req);
    if (token !== undefined) await endSession({ db }, tokenDigest(token));
    reply.clearCookie(SESSION_COOKIE, { path: '/' });
    return { ok: true };
  });

  // Signed out is an ordinary answer, not an error: the page asks this first.
  app.get('/api/session', async (req) => {
    const context = await findContext(req);
    const stored = context && (await findPractice(db, context.scope));
    if (!context || !stored) return null;
    const { name, invented, settings, timeZone } = stored.practice;
    const { memberId, name: memberName, roles } = context.actor;
    return {
      practice: { name, invented, jurisdiction: settings.jurisdiction },
      member: { id: memberId, name: memberName, roles: roles as Role[] },
      today: localDateAt(now(), timeZone),
    };
  });
};
