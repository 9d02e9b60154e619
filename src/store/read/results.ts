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

/** What a decision on the level keeps besides the columns. */
export interface DecisionBody {
  /** The level the list proposed; null where it proposed none. */
  readonly proposed: Level | null;
  /** Name of the person who decided, as it was then. */
  readonly by: string;
}

/** The newest level that a professional confirmed at this visit. */
export async function findConfirmedLevel(db: Db, scope: SiteScope, visitId: string): Promise<ConfirmedLevel | undefined> {
  const decided = (await listResults(db, scope, visitId, 'risk')).filter(({ decision }) => decision !== null).at(-1);
  if (!decided?.level || !decided.protocol || !decided.edition) return undefined;
  const { proposed, by } = decided.body as DecisionBody;
  return {
    level: decided.level as Level,
    protocol: decided.protocol,
    edition: decided.edition,
    by,
    at: decided.madeAt,
    ...(decided.reason === null ? {} : { reason: decided.reason }),
    ...(decided.decision === 'changed' && proposed !== null ? { changedFrom: proposed } : {}),
  };
}
