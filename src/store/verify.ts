import { sql } from 'kysely';
import { CHAIN_START, canonicalJson, hashOfChange, saltedDigest } from './chain.ts';
import { entityIdOf, LOGGED_TABLES, type LoggedTableName, loggedBody } from './loggedTables.ts';
import { migrations } from './migrations/migrations.ts';
import type { ChangeBodyTable, ChangeTable, Db, Stream } from './schema.ts';
import { NO_SITE } from './siteScope.ts';

export interface Problem {
  readonly siteId: string;
  readonly table: string;
  readonly id: string;
  /** One plain sentence. */
  readonly says: string;
}

export interface VerifyReport {
  readonly ok: boolean;
  readonly checked: { readonly changes: number; readonly rows: number };
  readonly problems: readonly Problem[];
}

/** Salt and digest of the newest change of a row, by "table/id". */
type Newest = Map<string, { readonly salt: string | undefined; readonly digest: string; readonly isGone: boolean }>;
type Report = (table: string, id: string, says: string) => void;

const BATCH = 1000;

/**
 * Recomputes the whole chain of every site and compares the digest of every current row with the newest one logged for it.
 * Reads in one transaction, which on SQLite holds the only connection: a running server gives it a read-only store of its own.
 */
export async function verify(db: Db): Promise<VerifyReport> {
  return db
    .transaction()
    .setIsolationLevel('repeatable read')
    .execute(async (trx) => {
      const problems: Problem[] = [];
      const checked = { changes: 0, rows: 0 };
      for (const siteId of await listSiteIds(trx)) {
        const report: Report = (table, id, says) => problems.push({ siteId, table, id, says });
        const newest: Newest = new Map();
        for (const stream of ['record', 'access'] as const) checked.changes += await checkStream(trx, { siteId, stream, newest, report });
        for (const logged of LOGGED_TABLES.filter(({ inSite }) => inSite === (siteId !== NO_SITE))) {
          checked.rows += await checkRows(trx, { siteId, logged, newest, report });
        }
        for (const [entity, { isGone }] of newest) if (!isGone) reportMissing(entity, report);
      }
      return { ok: problems.length === 0, checked, problems };
    });
}

/** Sites from the log as well as from the tables, so that a site that lost one of them is still looked at. */
async function listSiteIds(trx: Db): Promise<string[]> {
  const tables = ['site', 'change', 'changeBody', 'chainHead', 'member', 'patient', 'visit', 'catalog'] as const;
  const ids = new Set([NO_SITE]);
  for (const table of tables) {
    for (const { siteId } of await trx.selectFrom(table).select('siteId').distinct().execute()) ids.add(siteId);
  }
  return [...ids].sort();
}

interface StreamCheck {
  readonly siteId: string;
  readonly stream: Stream;
  readonly newest: Newest;
  readonly report: Report;
}

async function checkStream(trx: Db, { siteId, stream, newest, report }: StreamCheck): Promise<number> {
  let previous = { seq: 0, hash: CHAIN_START };
  let count = 0;
  for (;;) {
    const changes = await readChanges(trx, { siteId, stream, after: previous.seq });
    const until = changes.length < BATCH ? undefined : changes.at(-1)?.seq;
    const bodies = new Map((await readBodies(trx, { siteId, stream, after: previous.seq, until })).map((body) => [body.seq, body]));
    for (const change of changes) {
      const body = bodies.get(change.seq);
      bodies.delete(change.seq);
      checkChange(change, previous, body, report);
      if (stream === 'record') {
        const entity = `${change.entity}/${change.entityId}`;
        newest.set(entity, { salt: body?.salt, digest: digestOfRowNow(change, body), isGone: body?.body === 'null' });
      }
      previous = { seq: change.seq, hash: change.hash };
    }
    for (const seq of bodies.keys()) report('changeBody', `${stream}/${seq}`, 'This text belongs to no entry of the log.');
    count += changes.length;
    if (until === undefined) break;
  }
  await checkHead(trx, { siteId, stream, report, last: previous });
  return count;
}

/** A row written before a migration stands in its table as the migration left it; the log keeps it as it was written. */
function digestOfRowNow({ entity, digest }: ChangeTable, body: ChangeBodyTable | undefined): string {
  const upgrades = migrations.flatMap(({ upgradeRow }) => upgradeRow?.[entity as LoggedTableName] ?? []);
  if (!body || upgrades.length === 0 || body.body === 'null' || saltedDigest(body) !== digest) return digest;
  const row = upgrades.reduce<object>((before, upgrade) => upgrade(before), JSON.parse(body.body));
  return saltedDigest({ salt: body.salt, body: canonicalJson(row) });
}

interface Part {
  readonly siteId: string;
  readonly stream: Stream;
  readonly after: number;
}

/** Changes and texts are read side by side and not joined: a planner without statistics makes that join quadratic. */
function readChanges(trx: Db, { siteId, stream, after }: Part): Promise<ChangeTable[]> {
  const query = trx.selectFrom('change').selectAll().where('siteId', '=', siteId).where('stream', '=', stream).where('seq', '>', after);
  return query.orderBy('seq').limit(BATCH).execute();
}

function readBodies(trx: Db, { siteId, stream, after, until }: Part & { readonly until: number | undefined }): Promise<ChangeBodyTable[]> {
  const query = trx.selectFrom('changeBody').selectAll().where('siteId', '=', siteId).where('stream', '=', stream).where('seq', '>', after);
  return (until === undefined ? query : query.where('seq', '<=', until)).orderBy('seq').execute();
}

type Link = { readonly seq: number; readonly hash: string };

function checkChange(change: ChangeTable, previous: Link, body: ChangeBodyTable | undefined, report: Report): void {
  const { hash, ...hashed } = change;
  const id = `${change.stream}/${change.seq}`;
  if (change.seq !== previous.seq + 1) report('change', id, `The log jumps from entry ${previous.seq} to entry ${change.seq}.`);
  if (change.previousHash !== previous.hash) report('change', id, 'This entry does not follow the one before it.');
  if (hashOfChange(hashed) !== hash) report('change', id, 'A field of this entry was changed after it was written.');
  if (!body) report('changeBody', id, 'The text of this entry is missing.');
  else if (saltedDigest(body) !== change.digest) report('changeBody', id, 'The text of this entry was changed after it was written.');
}

interface HeadCheck {
  readonly siteId: string;
  readonly stream: Stream;
  readonly report: Report;
  readonly last: Link;
}

async function checkHead(trx: Db, { siteId, stream, report, last }: HeadCheck): Promise<void> {
  const query = trx.selectFrom('chainHead').selectAll().where('siteId', '=', siteId).where('stream', '=', stream);
  const head = await query.executeTakeFirst();
  if (!head) {
    // Accounts belong to no site, and a store without accounts has no such log.
    if (siteId !== NO_SITE || last.seq > 0) report('chainHead', stream, 'The head of this log is missing.');
  } else if (head.seq !== last.seq || head.hash !== last.hash) {
    const says = `The head says that entry ${head.seq} is the last; the log ends with entry ${last.seq}, or its end was changed.`;
    report('chainHead', stream, says);
  }
}

interface RowsCheck {
  readonly siteId: string;
  readonly logged: (typeof LOGGED_TABLES)[number];
  readonly newest: Newest;
  readonly report: Report;
}

/** Takes each row it meets out of `newest`, so that what is left there has no row. */
async function checkRows(trx: Db, { siteId, logged, newest, report }: RowsCheck): Promise<number> {
  let count = 0;
  for await (const row of readRows(trx, siteId, logged)) {
    const id = entityIdOf(logged.table, row);
    const entity = `${logged.table}/${id}`;
    const expected = newest.get(entity);
    newest.delete(entity);
    count += 1;
    if (!expected || expected.isGone) report(logged.table, id, 'This row is not in the log.');
    else if (
      expected.salt === undefined ||
      saltedDigest({ salt: expected.salt, body: canonicalJson(loggedBody(logged.table, row)) }) !== expected.digest
    ) {
      report(logged.table, id, 'This row differs from what was last written to the log.');
    }
  }
  return count;
}

/** Every row of a table in batches, in the order of its key. */
async function* readRows(trx: Db, siteId: string, { table, key, inSite }: (typeof LOGGED_TABLES)[number]): AsyncGenerator<object> {
  const columns = sql.join(key.map((column) => sql.ref(column)));
  const site = inSite ? sql`site_id = ${siteId}` : sql`1 = 1`;
  let after = sql`1 = 1`;
  for (;;) {
    const query = sql<object>`select * from ${sql.table(table)} where ${site} and ${after} order by ${columns} limit ${sql.lit(BATCH)}`;
    const { rows } = await query.execute(trx);
    yield* rows;
    const last = rows.at(-1);
    if (!last || rows.length < BATCH) return;
    after = sql`(${columns}) > (${sql.join(key.map((column) => Reflect.get(last, column)))})`;
  }
}

function reportMissing(entity: string, report: Report): void {
  const slash = entity.indexOf('/');
  report(entity.slice(0, slash), entity.slice(slash + 1), 'This row is in the log but no longer in its table.');
}
