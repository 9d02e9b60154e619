import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type Sqlite from 'better-sqlite3-multiple-ciphers';
import { StoreDamagedError, StoreError } from './errors.ts';
import { BACKUP_FILE, dataFileOf, KEYS_FILE, syncFile, syncFolder, writeDurably } from './files.ts';
import { assertSound, inspectSqliteFile, openSqliteFile, schemaVersionOf } from './sqliteFile.ts';

interface Head {
  readonly siteId: string;
  readonly stream: string;
  readonly seq: number;
  readonly hash: string;
}

/** What is counted and compared. */
export interface Contents {
  readonly schemaVersion: number;
  readonly rows: Readonly<Record<string, number>>;
  readonly heads: readonly Head[];
}

export interface BackupReport extends Contents {
  readonly madeAt: string;
}

/** These lose rows in normal use, so a copy made while the server runs may hold more of them than the file does later. */
const SHRINKING_TABLES = ['draft_field', 'session', 'job'];

export interface BackupOptions {
  /** The data folder. */
  readonly folder: string;
  readonly key: Uint8Array;
  /** A folder for this backup alone; it is made. */
  readonly into: string;
  readonly madeAt: string;
}

/**
 * A checked copy of the data with its key file, made through a connection of its own while the server goes on writing.
 * Works without pause for as long as the copy takes: run it in a worker or from the command line, not in the server's thread.
 * @throws StoreError STORE_EXISTS when the folder holds anything, StoreDamagedError when the copy does not stand the checks
 */
export function backupTo({ folder, key, into, madeAt }: BackupOptions): BackupReport {
  assertEmpty(into);
  mkdirSync(into, { recursive: true, mode: 0o700 });
  try {
    copyFileSync(join(folder, KEYS_FILE), join(into, KEYS_FILE));
    const contents = copyVerified(dataFileOf(folder), dataFileOf(into), key);
    const report = { madeAt, ...contents };
    syncFile(join(into, KEYS_FILE));
    // Written last: a folder without it is no complete backup.
    writeDurably(join(into, BACKUP_FILE), `${JSON.stringify(report, null, 2)}\n`);
    return report;
  } catch (error) {
    rmSync(into, { recursive: true, force: true });
    throw error;
  }
}

export interface RestoreOptions {
  readonly backup: string;
  readonly key: Uint8Array;
  /** The new data folder: empty or not there yet. */
  readonly folder: string;
}

/**
 * Puts a backup into an empty folder after checking it, and checks again what was put there.
 * @throws StoreError STORE_EXISTS when the folder holds anything, STORE_MISSING, StoreDamagedError
 */
export function restoreFrom({ backup, key, folder }: RestoreOptions): BackupReport {
  assertEmpty(folder);
  const report = readReport(backup);
  assertSame(report, inspectSqliteFile(dataFileOf(backup), key, checkedContents));
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  try {
    copyFileSync(join(backup, KEYS_FILE), join(folder, KEYS_FILE));
    copyVerified(dataFileOf(backup), dataFileOf(folder), key);
    assertSame(report, inspectSqliteFile(dataFileOf(folder), key, checkedContents));
    syncFile(join(folder, KEYS_FILE));
    syncFolder(folder);
  } catch (error) {
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true, force: true });
    throw error;
  }
  return report;
}

/**
 * Copies a data file, encrypted with the same key, opens the copy, checks every page, and compares counts and heads of the log.
 * The copy appears under its name only when it has passed.
 */
export function copyVerified(from: string, to: string, key: Uint8Array): Contents {
  const part = `${to}.part`;
  rmSync(part, { force: true });
  const source = openSqliteFile(from, key, { readOnly: true });
  try {
    const before = { change: dataVersion(source), contents: contentsOf(source) };
    source.prepare('vacuum into ?').run(part);
    const contents = inspectSqliteFile(part, key, checkedContents);
    const after = { change: dataVersion(source), contents: contentsOf(source) };
    if (before.change === after.change) assertSame(before.contents, contents);
    else assertBetween(before.contents, contents, after.contents, source);
    syncFile(part);
    renameSync(part, to);
    syncFolder(dirname(to));
    return contents;
  } catch (error) {
    rmSync(part, { force: true });
    throw error;
  } finally {
    source.close();
  }
}

/** Changes when another connection commits. */
function dataVersion(connection: Sqlite.Database): unknown {
  return connection.pragma('data_version', { simple: true });
}

function checkedContents(connection: Sqlite.Database): Contents {
  assertSound(connection, 'integrity_check');
  return contentsOf(connection);
}

/** Read in one transaction, so that counts and heads are of one moment. */
function contentsOf(connection: Sqlite.Database): Contents {
  return connection.transaction(() => {
    const names = connection.prepare(`select name from sqlite_schema where type = 'table' and name not like 'sqlite_%' order by name`);
    const tables = names.pluck().all() as string[];
    const rows = Object.fromEntries(
      tables.map((table) => [table, connection.prepare(`select count(*) from "${table}"`).pluck().get() as number]),
    );
    const heads = tables.includes('chain_head')
      ? (connection.prepare('select site_id as siteId, stream, seq, hash from chain_head order by site_id, stream').all() as Head[])
      : [];
    return { schemaVersion: schemaVersionOf(connection), rows, heads };
  })();
}

function assertSame(expected: Contents, copy: Contents): void {
  for (const table of Object.keys({ ...expected.rows, ...copy.rows })) {
    if (expected.rows[table] !== copy.rows[table])
      throw unlike(`${copy.rows[table] ?? 0} rows of ${table} instead of ${expected.rows[table] ?? 0}`);
  }
  if (JSON.stringify(expected.heads) !== JSON.stringify(copy.heads)) throw unlike('another end of the log');
}

/** While the server writes, the copy is of a moment between the two counts, and its log ends with an entry of the source's log. */
function assertBetween(before: Contents, copy: Contents, after: Contents, source: Sqlite.Database): void {
  for (const table of Object.keys(before.rows).filter((name) => !SHRINKING_TABLES.includes(name))) {
    const count = copy.rows[table] ?? 0;
    if (!((before.rows[table] ?? 0) <= count && count <= (after.rows[table] ?? 0))) throw unlike(`${count} rows of ${table}`);
  }
  const hashAt = source.prepare('select hash from change where site_id = ? and stream = ? and seq = ?').pluck();
  for (const { siteId, stream, seq, hash } of copy.heads) {
    if (seq > 0 && hashAt.get(siteId, stream, seq) !== hash) throw unlike('another end of the log');
  }
}

function unlike(says: string): StoreDamagedError {
  return new StoreDamagedError(`The copy does not match what it was made from: it has ${says}.`);
}

function readReport(backup: string): BackupReport {
  const file = join(backup, BACKUP_FILE);
  if (!existsSync(file)) throw new StoreError('STORE_MISSING', `There is no complete backup in ${backup}. Nothing was changed.`);
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (cause) {
    throw new StoreDamagedError(`The backup is damaged: ${basename(file)} cannot be read.`, { cause });
  }
}

function assertEmpty(folder: string): void {
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    throw new StoreError('STORE_EXISTS', `This folder is not empty: ${folder}. Choose an empty one. Nothing was changed.`);
  }
}
