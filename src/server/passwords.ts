import { randomBytes } from 'node:crypto';
import { hash, verify } from '@node-rs/argon2';
import { listCredentials } from '../store/read/accounts.ts';
import { findMember } from '../store/read/members.ts';
import type { Db } from '../store/schema.ts';
import type { SiteScope } from '../store/siteScope.ts';

/** True when an active member of the practice has this password. */
export async function checkPassword(db: Db, scope: SiteScope, memberId: string, password: string): Promise<boolean> {
  const secret = await findSecret(db, scope, memberId, 'password');
  return (await verify(secret ?? (await nobodysSecret()), password)) && secret !== undefined;
}

/** Hash of the password or the code of an active member. */
export async function findSecret(db: Db, scope: SiteScope, memberId: string, kind: 'password' | 'code'): Promise<string | undefined> {
  const member = await findMember(db, scope, memberId);
  if (!member?.active || member.accountId === null) return undefined;
  return (await listCredentials(db, member.accountId)).find((credential) => credential.kind === kind)?.secret;
}

let nobody: Promise<string> | undefined;

/** Checked where there is nothing to check, so that the time of the answer does not tell which of the two it was. */
export function nobodysSecret(): Promise<string> {
  nobody ??= hash(randomBytes(16).toString('hex'));
  return nobody;
}
