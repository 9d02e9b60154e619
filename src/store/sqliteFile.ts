import { existsSync, statSync } from 'node:fs';
import Sqlite from 'better-sqlite3-multiple-ciphers';
import { StoreDamagedError, StoreError } from './errors.ts';

export interface OpenOptions {
  readonly readOnly?: boolean | undefined;
  readonly create?: boolean | undefined;
}

const KEY_BYTES = 32;
const BUSY_MS = 5000;
/** Checking every page costs about 4 ms per MiB; above this size opening leaves it to `verify` and to the backup. */
const CHECK_AT_OPENING_UP_TO_BYTES = 64 * 1024 * 1024;

/** One connection with the settings that every connection needs. The format is that of SQLCipher 4, which other tools can open too. */
export function openSqliteFile(file: string, key: Uint8Array, { readOnly = false, create = false }: OpenOptions = {}): Sqlite.Database {
  if (key.length !== KEY_BYTES) throw new RangeError(`key must have ${KEY_BYTES} bytes: ${key.length}`);
  if (!create && !existsSync(file)) throw new StoreError('STORE_MISSING', `There is no data file: ${file}. Nothing was changed.`);
  const connection = new Sqlite(file, { readonly: readOnly, timeout: BUSY_MS });
  connection.pragma(`cipher='sqlcipher'`);
  connection.pragma(`key="x'${Buffer.from(key).toString('hex')}'"`);
  // Sorting and temporary tables would otherwise be written to the disk in plain text.
  connection.pragma('temp_store=MEMORY');
  return connection;
}

/**
 * Reads the file without changing a byte of it. A connection that may write would fold a left-over log into the file when it closes,
 * so where there is one this connection only reads.
 * @throws StoreDamagedError
 */
export function inspectSqliteFile<T>(file: string, key: Uint8Array, inspect: (connection: Sqlite.Database) => T): T {
  const walFile = `${file}-wal`;
  const readOnly = existsSync(walFile) && statSync(walFile).size > 0;
  let connection: Sqlite.Database | undefined;
  try {
    connection = openSqliteFile(file, key, { readOnly });
    if (statSync(file).size <= CHECK_AT_OPENING_UP_TO_BYTES) assertSound(connection, 'quick_check');
    return inspect(connection);
  } catch (cause) {
    if (isDamage(cause)) throw new StoreDamagedError(`The data file is damaged or belongs to another key file: ${file}.`, { cause });
    throw cause;
  } finally {
    connection?.close();
  }
}

/** @throws StoreDamagedError with the engine's first finding */
export function assertSound(connection: Sqlite.Database, check: 'quick_check' | 'integrity_check'): void {
  const finding: unknown = connection.pragma(`${check}(1)`, { simple: true });
  if (finding !== 'ok') throw new StoreDamagedError(`The data file is damaged (${String(finding).replaceAll('\n', ' ')}).`);
}

function isDamage(error: unknown): boolean {
  return error instanceof Sqlite.SqliteError && /^SQLITE_(NOTADB|CORRUPT|IOERR)/.test(error.code);
}

/** 0 for a file without tables. */
export function schemaVersionOf(connection: Sqlite.Database): number {
  const hasTable = connection.prepare(`select 1 from sqlite_schema where name = 'schema_version'`).get();
  return hasTable ? Number(connection.prepare('select coalesce(max(version), 0) from schema_version').pluck().get()) : 0;
}
