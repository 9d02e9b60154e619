import type { Db, MemberTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export interface Member {
  readonly id: string;
  readonly accountId: string | null;
  readonly name: string;
  readonly roles: readonly string[];
  readonly trainedSwab: boolean;
  readonly active: boolean;
  readonly version: number;
}

/** Active or not, by name. */
export async function listMembers(db: Db, scope: SiteScope): Promise<Member[]> {
  const rows = await db.selectFrom('member').selectAll().where('siteId', '=', scope.siteId).orderBy('name').orderBy('id').execute();
  return rows.map(toMember);
}

export async function findMember(db: Db, scope: SiteScope, id: string): Promise<Member | undefined> {
  const row = await db.selectFrom('member').selectAll().where('siteId', '=', scope.siteId).where('id', '=', id).executeTakeFirst();
  return row && toMember(row);
}

function toMember({ id, accountId, name, roles, trainedSwab, active, version }: MemberTable): Member {
  return { id, accountId, name, roles: JSON.parse(roles), trainedSwab: trainedSwab === 1, active: active === 1, version };
}
