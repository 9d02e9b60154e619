import { sql } from 'kysely';
import { engineKindOf, SQL_WORDS, type SqlWords } from '../dialect.ts';
import { StoreNewerError } from '../errors.ts';
import type { LoggedTableName } from '../loggedTables.ts';
import type { Db } from '../schema.ts';

/** One step forward. There is no step back: a copy is made before each step, and a backup is restored instead. */
export interface Migration {
  readonly version: number;
  readonly name: string;
  /** The same statements for both engines but for the words that differ. */
  readonly statements: (words: SqlWords) => readonly string[];
  /** What the statements do to rows written before them, by table: the log keeps a row as it was written, and `verify` compares the two. */
  readonly upgradeRow?: Readonly<Partial<Record<LoggedTableName, (row: object) => object>>>;
}

/** Any fixed number: two servers that start at once on one PostgreSQL take turns. */
const MIGRATION_LOCK = 4_310_001;

/** 0 for a store without tables. */
export async function readSchemaVersion(db: Db): Promise<number> {
  const found =
    engineKindOf(db) === 'postgres'
      ? await sql`select 1 where to_regclass('schema_version') is not null`.execute(db)
      : await sql`select 1 from sqlite_schema where name = 'schema_version'`.execute(db);
  if (found.rows.length === 0) return 0;
  const row = await db
    .selectFrom('schemaVersion')
    .select(({ fn }) => fn.max('version').as('version'))
    .executeTakeFirst();
  return Number(row?.version ?? 0);
}

export function latestVersion(migrations: readonly Migration[]): number {
  return Math.max(0, ...migrations.map(({ version }) => version));
}

/**
 * Brings the store to the newest version, all steps or none.
 * @throws StoreNewerError when the store was made by a newer program; nothing is changed then
 */
export async function migrate(db: Db, migrations: readonly Migration[], now: () => string): Promise<void> {
  const kind = engineKindOf(db);
  await db.transaction().execute(async (trx) => {
    if (kind === 'postgres') await sql`select pg_advisory_xact_lock(${MIGRATION_LOCK})`.execute(trx);
    const from = await readSchemaVersion(trx);
    if (from > latestVersion(migrations)) throw new StoreNewerError('This data');
    if (from === 0) await createVersionTable(trx);
    for (const step of migrations.filter(({ version }) => version > from)) {
      for (const statement of step.statements(SQL_WORDS[kind])) await sql.raw(statement).execute(trx);
      await trx.insertInto('schemaVersion').values({ version: step.version, name: step.name, appliedAt: now() }).execute();
    }
  });
}

async function createVersionTable(trx: Db): Promise<void> {
  const { integer, text, end } = SQL_WORDS[engineKindOf(trx)];
  const columns = `version ${integer} not null primary key, name ${text} not null, applied_at ${text} not null`;
  await sql.raw(`create table schema_version (${columns} ${end}`).execute(trx);
}
