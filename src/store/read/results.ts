import type { ConfirmedLevel } from '../../core/regimen/types.ts';
import type { Level } from '../../core/risk/types.ts';
import type { Db, ResultKind, ResultTable } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type Result = Omit<ResultTable, 'siteId' | 'body'> & { readonly body: unknown };

/** Of one visit, oldest first, of one kind or all. */
export async function listResults(db: Db, scope: SiteScope, visitId: string, kind?: ResultKind): Promise<Result[]> {
  let query = db.selectFrom('result').selectAll().where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  if (kind) query = query.where('kind', '=', kind);
  const rows = await query.orderBy('madeAt').orderBy('id').execute();
  return rows.map(({ siteId: _siteId, body, ...row }) => ({ ...row, body: JSON.parse(body) }));
}

/** UTC; undefined when the visit has no result. */
export async function findNewestResultAt(db: Db, scope: SiteScope, visitId: string): Promise<string | undefined> {
  const query = db.selectFrom('result').select('madeAt').where('siteId', '=', scope.siteId).where('visitId', '=', visitId);
  return (await query.orderBy('madeAt', 'desc').limit(1).executeTakeFirst())?.madeAt;
}

/** Of one kind, as it was computed for several visits, oldest first; decisions are not among them. */
export async function listComputedResults(db: Db, scope: SiteScope, visitIds: readonly string[], kind: ResultKind): Promise<Result[]> {
  if (visitIds.length === 0) return [];
  const rows = await db
    .selectFrom('result')
    .selectAll()
    .where('siteId', '=', scope.siteId)
    .where('visitId', 'in', visitIds)
    .where('kind', '=', kind)
    .where('decision', 'is', null)
    .orderBy('madeAt')
    .orderBy('id')
    .execute();
  return rows.map(({ siteId: _siteId, body, ...row }) => ({ ...row, body: JSON.parse(body) }));
}

/** What a decision on the level keeps besides the columns. */
export interface DecisionBody {
  /** The level the list proposed; null where it proposed none. */
  readonly proposed: Level | null;
  /** Name of the person who decided, as it was then. */
  readonly by: string;
}

/** The newest level that a professional confirmed at this visit. */
export async function findConfirmedLevel(db: Db, scope: SiteScope, visitId: string): Promise<ConfirmedLevel | undefined> {
  return (await listConfirmedLevels(db, scope, [visitId])).get(visitId);
}

/** Stays below what either engine takes in one statement. */
const IDS_PER_QUERY = 10_000;

/** By visit; a visit without a confirmed level has no entry. */
export async function listConfirmedLevels(
  db: Db,
  scope: SiteScope,
  visitIds: readonly string[],
): Promise<ReadonlyMap<string, ConfirmedLevel>> {
  const newest = new Map<string, ResultTable>();
  for (let from = 0; from < visitIds.length; from += IDS_PER_QUERY) {
    const query = db.selectFrom('result').selectAll().where('siteId', '=', scope.siteId).where('kind', '=', 'risk');
    const decided = query.where('visitId', 'in', visitIds.slice(from, from + IDS_PER_QUERY)).where('decision', 'is not', null);
    for (const row of await decided.orderBy('madeAt').orderBy('id').execute()) newest.set(row.visitId, row);
  }
  return new Map([...newest].flatMap(([visitId, row]) => toConfirmedLevel(row).map((level) => [visitId, level] as const)));
}

/** None where the newest decision took the level back. */
function toConfirmedLevel({ level, protocol, edition, body, madeAt, reason, decision }: ResultTable): ConfirmedLevel[] {
  if (!level || !protocol || !edition) return [];
  const { proposed, by }: DecisionBody = JSON.parse(body);
  return [
    {
      level: level as Level,
      protocol,
      edition,
      by,
      at: madeAt,
      ...(reason === null ? {} : { reason }),
      ...(decision === 'changed' && proposed !== null ? { changedFrom: proposed } : {}),
    },
  ];
}
