import { verify } from '@node-rs/argon2';
import { listCredentials } from '../store/read/accounts.ts';
import { findMember } from '../store/read/members.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** True when an active member of the practice has this password. */
export async function checkPassword(db: Db, scope: SiteScope, memberId: string, password: string): Promise<boolean> {
  const member = await findMember(db, scope, memberId);
  if (!member?.active || member.accountId === null) return false;
  const credentials = await listCredentials(db, member.accountId);
  for (const { kind, secret } of credentials) {
    if (kind === 'password' && (await verify(secret, password))) return true;
  }
  return false;
}
