import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { v7 as newUuid } from 'uuid';
import { z } from 'zod';
import { logAccess } from '../actions/logAccess.ts';
import { endSession, startSession } from '../actions/sessions.ts';
import { type HiddenView, type Role, type SessionView, SignInBody } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { hideAfterMinutes } from '../content/practiceDefaults.ts';
import { findMember, listMembers } from '../store/read/members.ts';
import { findPractice } from '../store/read/sites.ts';
import type { SiteScope } from '../store/siteScope.ts';
import type { FindSigned, ServerDeps } from './context.ts';
import { checkPassword, findSecret } from './passwords.ts';
import { newToken, SESSION_COOKIE, type SignInAddress, sessionEnd, sessionToken, setSessionCookie, tokenDigest } from './sessions.ts';
import { localDateAt } from './siteClock.ts';

export interface SignInOptions extends ServerDeps {
  readonly findSigned: FindSigned;
  /** The practice of this machine; only its members can sign in here. */
  readonly scope: SiteScope;
  readonly address: SignInAddress;
  /** The member whom the printed address signs in. */
  readonly firstMemberId: string;
}

const TRIES_PER_MINUTE = 10;

export const signInRoutes: FastifyPluginAsyncZod<SignInOptions> = async (app, { db, now, findSigned, scope, address, firstMemberId }) => {
  const begin = async (memberId: string): Promise<string> => {
    const token = newToken();
    const accountId = (await findMember(db, scope, memberId))?.accountId ?? null;
    await startSession({ db, now }, { id: tokenDigest(token), accountId, siteId: scope.siteId, memberId, expiresAt: sessionEnd(now()) });
    return token;
  };

  const tellAccess = async (memberId: string, action: string) => {
    const member = await findMember(db, scope, memberId);
    if (!member) return;
    const actor = { memberId, name: member.name, roles: member.roles };
    await logAccess({ db, scope, now, newId: newUuid, actor }, { action, entity: { table: 'member', id: memberId } });
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
      await tellAccess(memberId, 'sign-in');
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
  app.get('/api/session', async (req): Promise<SessionView | HiddenView | null> => {
    const signed = await findSigned(req);
    if (!signed) return null;
    const { context, isHidden, since } = signed;
    if (isHidden) return { hidden: true, memberId: context.actor.memberId };
    const stored = await findPractice(db, context.scope);
    if (!stored) return null;
    const { name, invented, settings, timeZone } = stored.practice;
    const { memberId, name: memberName, roles } = context.actor;
    return {
      practice: { name, invented, jurisdiction: settings.jurisdiction },
      member: {
        id: memberId,
        name: memberName,
        roles: roles as Role[],
        hasCode: (await findSecret(db, context.scope, memberId, 'code')) !== undefined,
        hasPassword: (await findSecret(db, context.scope, memberId, 'password')) !== undefined,
      },
      since,
      hereForMs: Math.max(0, Date.parse(now()) - Date.parse(since)),
      hideAfterMinutes: stored.hideAfterMinutes ?? hideAfterMinutes.value,
      today: localDateAt(now(), timeZone),
    };
  });
};
