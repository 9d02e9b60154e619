import type { LoggedTableName } from '../loggedTables.ts';
import type { ChangeTable, Db, Stream } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type Change = ChangeTable & { /** The row as it stood after the change; undefined once erased. */ readonly body: unknown };

/** History of one row, oldest first. */
export async function listChangesOf(db: Db, scope: SiteScope, entity: { table: LoggedTableName; id: string }): Promise<Change[]> {
  const query = changesOf(db, scope, 'record').where('entity', '=', entity.table).where('entityId', '=', entity.id);
  return withBodies(db, scope, 'record', await query.orderBy('seq').execute());
}

/** Who looked at or printed it, or tried to, oldest first. */
export function listAccessTo(db: Db, scope: SiteScope, entity: { table: LoggedTableName; id: string }): Promise<ChangeTable[]> {
  const query = changesOf(db, scope, 'access').where('entity', '=', entity.table).where('entityId', '=', entity.id);
  return query.orderBy('seq').execute();
}

/** Why each row was last changed, by its id; none for a change without a reason. */
export async function listLastReasons(
  db: Db,
  scope: SiteScope,
  table: LoggedTableName,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (ids.length === 0) return new Map();
  const query = changesOf(db, scope, 'record').where('entity', '=', table).where('entityId', 'in', ids);
  const last = new Map((await query.orderBy('seq').execute()).map(({ entityId, reason }) => [entityId, reason]));
  return new Map([...last].flatMap(([id, reason]) => (reason === null ? [] : [[id, reason] as const])));
}

/** The newest changes of a stream, newest first. */
export async function listLatestChanges(db: Db, scope: SiteScope, stream: Stream, limit = 100): Promise<Change[]> {
  return withBodies(db, scope, stream, await changesOf(db, scope, stream).orderBy('seq', 'desc').limit(limit).execute());
}

/** When the newest entry of the record was made, UTC; undefined for an empty record. */
export async function findNewestChangeAt(db: Db, scope: SiteScope): Promise<string | undefined> {
  const query = db.selectFrom('change').select('at').where('siteId', '=', scope.siteId).where('stream', '=', 'record');
  return (await query.orderBy('seq', 'desc').limit(1).executeTakeFirst())?.at;
}

function changesOf(db: Db, scope: SiteScope, stream: Stream) {
  return db.selectFrom('change').selectAll().where('siteId', '=', scope.siteId).where('stream', '=', stream);
}

/** Read apart and not joined: a planner without statistics makes that join slow. */
async function withBodies(db: Db, scope: SiteScope, stream: Stream, changes: readonly ChangeTable[]): Promise<Change[]> {
  if (changes.length === 0) return [];
  const seqs = changes.map(({ seq }) => seq);
  const query = db.selectFrom('changeBody').select(['seq', 'body']).where('siteId', '=', scope.siteId).where('stream', '=', stream);
  const bodies = new Map((await query.where('seq', 'in', seqs).execute()).map(({ seq, body }) => [seq, body]));
  return changes.map((change) => {
    const body = bodies.get(change.seq);
    return { ...change, body: body === undefined ? undefined : JSON.parse(body) };
  });
}
