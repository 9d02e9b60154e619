import { hash } from '@node-rs/argon2';
import type { FastifyRequest } from 'fastify';
import type { FastifyPluginAsyncZod } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { hideSession, replaceSession } from '../actions/sessions.ts';
import { setCode } from '../actions/setCode.ts';
import { NewCode, WhoBody } from '../api/apiTypes.ts';
import { AppError } from '../api/errors.ts';
import { findMember } from '../store/read/members.ts';
import { CodeDoor } from './codeDoor.ts';
import type { ContextOf, FindSigned, ServerDeps } from './context.ts';
import { checkPassword, findSecret } from './passwords.ts';
import { newToken, sessionEnd, setSessionCookie, tokenDigest } from './sessions.ts';

interface WhoOptions extends ServerDeps {
  readonly findSigned: FindSigned;
  readonly contextOf: ContextOf;
}

const CODES_PER_MINUTE = 60;
const PASSWORDS_PER_MINUTE = 10;

/** A code is shut after five wrong tries anyway; this is for passwords, and counts them apart so that quick changes shut nobody out. */
const slowly = {
  rateLimit: {
    hook: 'preHandler',
    max: (req: FastifyRequest) => (givesPassword(req) ? PASSWORDS_PER_MINUTE : CODES_PER_MINUTE),
    keyGenerator: (req: FastifyRequest) => `${req.ip} ${givesPassword(req) ? 'password' : 'code'}`,
    timeWindow: '1 minute',
  },
} as const;

const givesPassword = ({ body }: FastifyRequest) => typeof body === 'object' && body !== null && 'password' in body;

/** Who is here: change of member by a short code, and the hidden screen, for which these are the only answers. */
export const whoRoutes: FastifyPluginAsyncZod<WhoOptions> = async (app, { db, now, findSigned, contextOf }) => {
  const door = new CodeDoor();

  app.post('/api/session/hide', { schema: { body: z.strictObject({}) } }, async (req) => {
    const signed = await findSigned(req);
    if (!signed) throw new AppError('NOT_SIGNED_IN', 'Sign in first.');
    const { memberId } = signed.context.actor;
    const { scope } = signed.context;
    const secrets = await Promise.all([findSecret(db, scope, memberId, 'code'), findSecret(db, scope, memberId, 'password')]);
    if (secrets.every((secret) => secret === undefined))
      throw new AppError('INPUT_INVALID', 'Set a password and a code first: without them nobody could come back.');
    if (!signed.isHidden) await hideSession({ db, now }, signed.sessionId);
    return { ok: true };
  });

  app.post('/api/session/who', { schema: { body: WhoBody }, config: slowly }, async (req, reply) => {
    const signed = await findSigned(req);
    if (!signed) throw new AppError('NOT_SIGNED_IN', 'Sign in first.');
    if (!(await door.check(signed, req.body)))
      throw new AppError(
        'WRONG_CODE',
        'This name and this code do not go together. After five wrong tries a code is shut until the password is given.',
      );
    const { memberId } = req.body;
    const { siteId } = signed.context.scope;
    const token = newToken();
    const accountId = (await findMember(db, signed.context.scope, memberId))?.accountId ?? null;
    const session = { id: tokenDigest(token), accountId, siteId, memberId, expiresAt: sessionEnd(now()) };
    await replaceSession({ db, now }, signed.sessionId, session);
    setSessionCookie(reply, token);
    return { ok: true };
  });

  app.put('/api/members/:id/code', { schema: { params: z.strictObject({ id: z.uuid() }), body: NewCode }, config: slowly }, async (req) => {
    const context = await contextOf(req);
    if (req.params.id !== context.actor.memberId) throw new AppError('NOT_ALLOWED', 'Everyone sets his or her own code.');
    const { password, code } = req.body;
    if (!(await checkPassword(context.db, context.scope, req.params.id, password)))
      throw new AppError('WRONG_CODE', 'password: this is not your password.');
    if (isGuessedFirst(code)) throw new AppError('INPUT_INVALID', 'code: one digit over and over, or digits in a row, are guessed first.');
    await setCode(context, { codeHash: await hash(code) });
    return { ok: true };
  });
};

/** "0000", "1234", "87654321". */
function isGuessedFirst(code: string): boolean {
  const steps = new Set([...code].slice(1).map((digit, i) => Number(digit) - Number(code[i])));
  const [step] = steps;
  return steps.size === 1 && step !== undefined && Math.abs(step) <= 1;
}
