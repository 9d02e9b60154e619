import type { LoggedTableName } from '../loggedTables.ts';
import type { ChangeTable, Db, Stream } from '../schema.ts';
import type { SiteScope } from '../siteScope.ts';

export type Change = ChangeTable & { /** The row as it stood after the change; undefined once erased. */ readonly body: unknown };

/** History of one row, oldest first. */
export async function listChangesOf(db: Db, scope: SiteScope, entity: { table: LoggedTableName; id: string }): Promise<Change[]> {
  const rows = await changesOf(db, scope, 'record')
    .where('entity', '=', entity.table)
    .where('entityId', '=', entity.id)
    .orderBy('change.seq')
    .execute();
  return rows.map(toChange);
}

/** The newest changes of a stream, newest first. */
export async function listLatestChanges(db: Db, scope: SiteScope, stream: Stream, limit = 100): Promise<Change[]> {
  return (await changesOf(db, scope, stream).orderBy('change.seq', 'desc').limit(limit).execute()).map(toChange);
}

function changesOf(db: Db, scope: SiteScope, stream: Stream) {
  return db
    .selectFrom('change')
    .leftJoin('changeBody', (join) =>
      join
        .onRef('changeBody.siteId', '=', 'change.siteId')
        .onRef('changeBody.stream', '=', 'change.stream')
        .onRef('changeBody.seq', '=', 'change.seq'),
    )
    .selectAll('change')
    .select('changeBody.body')
    .where('change.siteId', '=', scope.siteId)
    .where('change.stream', '=', stream);
}

function toChange({ body, ...row }: ChangeTable & { body: string | null }): Change {
  return { ...row, body: body === null ? undefined : JSON.parse(body) };
}
