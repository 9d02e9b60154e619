import { existsSync, mkdirSync } from 'node:fs';
import type Sqlite from 'better-sqlite3-multiple-ciphers';
import { CamelCasePlugin, Kysely, PostgresDialect, sql } from 'kysely';
import { copyVerified } from './backup.ts';
import type { EngineKind } from './dialect.ts';
import { StoreDamagedError, StoreError, StoreNewerError } from './errors.ts';
import { dataFileOf } from './files.ts';
import { takeLock } from './lockFile.ts';
import { latestVersion, type Migration, migrate } from './migrations/migrate.ts';
import { migrations as allMigrations } from './migrations/migrations.ts';
import type { Database, Db } from './schema.ts';
import { sqliteDialect } from './sqliteDialect.ts';
import { inspectSqliteFile, openSqliteFile, schemaVersionOf } from './sqliteFile.ts';

export interface Store {
  readonly kind: EngineKind;
  readonly db: Db;
  close(): Promise<void>;
}

interface CommonOptions {
  /** For tests of migrations. */
  readonly migrations?: readonly Migration[];
  readonly now?: () => string;
}

export interface SqliteOptions extends CommonOptions {
  readonly folder: string;
  /** 32 bytes, from `openKeys`. */
  readonly key: Uint8Array;
  /** Makes an empty store where there is none; without it a missing data file is an error. */
  readonly create?: boolean;
  /** A second connection beside the running server, for long reads; takes no lock and never migrates. */
  readonly readOnly?: boolean;
}

const systemTime = () => new Date().toISOString();

/**
 * Opens the practice's data file, migrates it after a verified copy, and holds the folder's lock until `close`.
 * @throws StoreInUseError, StoreDamagedError, StoreNewerError, StoreError STORE_MISSING; nothing on the disk is changed then
 */
export async function openSqliteStore(options: SqliteOptions): Promise<Store> {
  const { folder, create = false, readOnly = false } = options;
  if (create) mkdirSync(folder, { recursive: true, mode: 0o700 });
  if (!create && !existsSync(dataFileOf(folder))) {
    throw new StoreError('STORE_MISSING', `There is no data file: ${dataFileOf(folder)}. Nothing was changed.`);
  }
  const releaseLock = readOnly ? () => {} : takeLock(folder);
  try {
    return await openLocked(options, releaseLock);
  } catch (error) {
    releaseLock();
    throw error;
  }
}

async function openLocked(
  { folder, key, create = false, readOnly = false, migrations = allMigrations, now = systemTime }: SqliteOptions,
  releaseLock: () => void,
): Promise<Store> {
  const file = dataFileOf(folder);
  if (existsSync(file)) {
    const isFirstStartBrokenOff = existsSync(`${file}-wal`);
    const version = inspectSqliteFile(file, key, schemaVersionOf);
    // The engine takes a file cut off to nothing for a new one: a practice would open without its people.
    if (version === 0 && !create && !isFirstStartBrokenOff) throw new StoreDamagedError(`The data file is empty: ${file}.`);
    const newest = latestVersion(migrations);
    if (version > newest) throw new StoreNewerError('This data');
    if (!readOnly && version > 0 && version < newest) copyVerified(file, `${file}.before-version-${newest}-${fileTime(now())}`, key);
  }
  const connection = openSqliteFile(file, key, { readOnly, create });
  if (!readOnly) makeDurable(connection);
  const db = new Kysely<Database>({ dialect: sqliteDialect(connection), plugins: [new CamelCasePlugin()] });
  const close = async () => {
    await db.destroy();
    // Kysely closes only a connection it has used.
    connection.close();
    releaseLock();
  };
  try {
    if (!readOnly) await migrate(db, migrations, now);
  } catch (error) {
    connection.close();
    throw error;
  }
  return { kind: 'sqlite', db, close };
}

/** A commit is on the disk before it is acknowledged; on a Mac that takes the second pragma. */
function makeDurable(connection: Sqlite.Database): void {
  connection.pragma('journal_mode=WAL');
  connection.pragma('synchronous=FULL');
  connection.pragma('fullfsync=ON');
  connection.pragma('foreign_keys=ON');
}

/** 20260304T093612345Z */
function fileTime(isoTime: string): string {
  return isoTime.replaceAll(/[-:.]/g, '');
}

export interface PostgresOptions extends CommonOptions {
  readonly connectionString: string;
}

const OLDEST_POSTGRES = 150_000;
const INT8_OID = 20;

/** @throws StoreError STORE_UNSUITABLE before PostgreSQL 15 or in another encoding than UTF-8, StoreNewerError */
export async function openPostgresStore({
  connectionString,
  migrations = allMigrations,
  now = systemTime,
}: PostgresOptions): Promise<Store> {
  // Loaded here, so that a practice with one file does not carry it.
  const { default: pg } = await import('pg');
  const pool = new pg.Pool({
    connectionString,
    // Whatever the server's own setting: an answer is on its disk before it is acknowledged.
    options: '-c synchronous_commit=on -c timezone=UTC',
    types: { getTypeParser: (oid, format) => (oid === INT8_OID ? toSafeInteger : pg.types.getTypeParser(oid, format)) },
  });
  // A connection that breaks while idle is replaced at the next query; without a listener it would end the process.
  pool.on('error', () => {});
  const db = new Kysely<Database>({ dialect: new PostgresDialect({ pool }), plugins: [new CamelCasePlugin()] });
  try {
    await assertSuitable(db);
    await migrate(db, migrations, now);
  } catch (error) {
    await db.destroy();
    throw error;
  }
  return { kind: 'postgres', db, close: () => db.destroy() };
}

/** Sums and counts come as bigint texts. */
function toSafeInteger(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`the database holds a whole number beyond 2^53: ${text}`);
  return value;
}

async function assertSuitable(db: Db): Promise<void> {
  const query = sql<{ release: number; encoding: string }>`
    select current_setting('server_version_num')::int as release, current_setting('server_encoding') as encoding`;
  const { release, encoding } = (await query.execute(db)).rows[0] ?? { release: 0, encoding: '' };
  if (release < OLDEST_POSTGRES) throw new StoreError('STORE_UNSUITABLE', 'Ebbline needs PostgreSQL 15 or newer. Nothing was changed.');
  if (encoding !== 'UTF8') throw new StoreError('STORE_UNSUITABLE', 'Ebbline needs a PostgreSQL database in UTF-8. Nothing was changed.');
}
