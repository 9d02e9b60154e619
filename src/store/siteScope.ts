import type { Db } from './schema.ts';

declare const checked: unique symbol;

/** The site whose rows a query may see. Made in this file only: from a member who signed in, never from a URL. */
export interface SiteScope {
  readonly siteId: string;
  readonly [checked]: true;
}

export interface MemberIdentity {
  readonly memberId: string;
  readonly name: string;
  readonly roles: readonly string[];
}

/** The scope and the identity of an active member of a site, or undefined when there is no such member or the member has left. */
export async function findMemberScope(
  db: Db,
  signedIn: { readonly siteId: string; readonly memberId: string },
): Promise<{ scope: SiteScope; member: MemberIdentity } | undefined> {
  const row = await db
    .selectFrom('member')
    .select(['id', 'name', 'roles'])
    .where('siteId', '=', signedIn.siteId)
    .where('id', '=', signedIn.memberId)
    .where('active', '=', 1)
    .executeTakeFirst();
  return row && { scope: scopeOfSite(signedIn.siteId), member: { memberId: row.id, name: row.name, roles: JSON.parse(row.roles) } };
}

/** For the owner of the machine (set-up, command line), who has every site of the store. */
export function scopeOfSite(siteId: string): SiteScope {
  return { siteId } as SiteScope;
}

/** The site id under which changes of accounts and credentials, which belong to no site, are logged. */
export const NO_SITE = '*';
