import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';

export const SESSION_COOKIE = 'ebbline_session';
const SESSION_HOURS = 12;

/** A secret for a cookie or a one-time address: 256 random bits. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

/** What is stored instead of the token. */
export function tokenDigest(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

export function sessionEnd(now: string): string {
  return new Date(Date.parse(now) + SESSION_HOURS * 3_600_000).toISOString();
}

/** Only over this machine's own address, never read by a script, never sent from another site's page. */
export function setSessionCookie(reply: FastifyReply, token: string): void {
  reply.setCookie(SESSION_COOKIE, token, { path: '/', httpOnly: true, sameSite: 'strict', maxAge: SESSION_HOURS * 3600 });
}

export function sessionToken(req: FastifyRequest): string | undefined {
  return req.cookies[SESSION_COOKIE];
}

/**
 * The address printed at start. In the invented practice it works as long as the server runs (its passphrase is public anyway);
 * in a real one it works once.
 */
export class SignInAddress {
  readonly token = newToken();
  private spent = false;

  constructor(private readonly reusable: boolean) {}

  use(token: string): boolean {
    const fits = timingSafeEqual(Buffer.from(tokenDigest(token)), Buffer.from(tokenDigest(this.token)));
    if (!fits || (this.spent && !this.reusable)) return false;
    this.spent = true;
    return true;
  }
}
