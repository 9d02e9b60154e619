// Answers per second that are on the disk when acknowledged, one after another: Ebbline's action against the bare drivers.
import { randomBytes } from 'node:crypto';
import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { openVisit } from '../src/actions/openVisit.ts';
import { recordAnswer } from '../src/actions/recordAnswer.ts';
import { openPostgresStore, openSqliteStore, type Store } from '../src/store/openStore.ts';
import { openSqliteFile } from '../src/store/sqliteFile.ts';
import { findPostgres, startPostgres } from '../test/store/postgresServer.ts';
import { testPractice } from '../test/store/practice.ts';
import { type Contender, digits, measure, median, ratioOf, timesOf } from './measure.ts';

const ANSWERS = 100;
const ROUNDS = 25;
const OWN = 'Ebbline recordAnswer on encrypted SQLite';
const COLUMNS = 'site_id, visit_id, path, value, member_id, saved_at, version';
const TABLE = `create table draft_field (${COLUMNS.replaceAll(/, |$/g, ' text not null, ')}primary key (site_id, visit_id, path))`;
/** One visit has about so many questions; each is answered again and again. */
const PATHS = Array.from({ length: 60 }, (_, n) => `answers.question_${n}`);
const ANSWER = { how: 'asked', value: true, askedOn: '2026-11-25' };

const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
const closers: (() => unknown)[] = [() => rmSync(folder, { recursive: true, force: true })];
try {
  const contenders = [await ownSqlite(), bareSqlite(), bareSync(), ...(await postgres())];
  const rounds = await measure(contenders, ROUNDS);
  const own = timesOf(rounds, OWN);
  console.log(`${ANSWERS} answers a round, ${ROUNDS} rounds, one writer:`);
  for (const [name, times] of rounds) {
    const ratio = name === OWN ? '' : `; answers a second, Ebbline on SQLite / this: ${ratioOf(times, own)}`;
    console.log(`  ${name}: ${digits(ANSWERS / (median(times) / 1000))} a second${ratio}`);
  }
} finally {
  for (const close of closers.reverse()) await close();
}

async function ownSqlite(): Promise<Contender> {
  const store = await openSqliteStore({ folder: join(folder, 'own'), key: randomBytes(32), create: true });
  closers.push(() => store.close());
  return { name: OWN, run: await answering(store) };
}

/** Rights, the open visit and the version are checked in one transaction with the write, as on the server. */
async function answering(store: Store): Promise<() => Promise<void>> {
  const practice = await testPractice(store);
  const context = practice.as('hygienist');
  const visit = await openVisit(context, { patientId: await practice.newPatient(), kind: 'chair', onDate: '2026-11-25' });
  return async () => {
    for (let n = 0; n < ANSWERS; n += 1) await recordAnswer(context, { visitId: visit.id, path: pathOf(n), value: ANSWER });
  };
}

/** The same file format, key and pragmas, a table of the same columns, one prepared statement: no checks, no foreign keys. */
function bareSqlite(): Contender {
  const connection = openSqliteFile(join(folder, 'bare.db'), randomBytes(32), { create: true });
  closers.push(() => connection.close());
  for (const pragma of ['journal_mode=WAL', 'synchronous=FULL', 'fullfsync=ON', 'foreign_keys=ON']) connection.pragma(pragma);
  connection.exec(`${TABLE} strict`);
  const save = connection.prepare(upsert(['?', '?', '?', '?', '?', '?', '?']));
  return {
    name: 'better-sqlite3-multiple-ciphers, prepared statement',
    run() {
      for (let n = 0; n < ANSWERS; n += 1) save.run(...rowOf(n));
    },
  };
}

/** What the disk alone takes: 4 KiB at the end of a file, then fdatasync. */
function bareSync(): Contender {
  const file = openSync(join(folder, 'bytes'), 'w');
  closers.push(() => closeSync(file));
  const page = randomBytes(4096);
  return {
    name: '4 KiB appended to a file and fdatasync, no database',
    run() {
      for (let n = 0; n < ANSWERS; n += 1) {
        writeSync(file, page);
        fdatasyncSync(file);
      }
    },
  };
}

/** A server of its own on a socket in a temporary folder, with fsync on. */
async function postgres(): Promise<Contender[]> {
  const binaries = findPostgres();
  if (!binaries) {
    console.log('SKIPPED: PostgreSQL, because its server programs are not installed.');
    return [];
  }
  const server = await startPostgres(binaries, { durable: true });
  closers.push(() => server.stop());
  const connectionString = server.connectionString('postgres');
  const client = new pg.Client({ connectionString });
  await client.connect();
  closers.push(() => client.end());
  const { rows } = await client.query(`select current_setting('fsync') || current_setting('synchronous_commit') as said`);
  if (rows[0]?.said !== 'onon') throw new Error('PostgreSQL was started without fsync');
  await client.query(`create schema bare; set search_path = bare; ${TABLE}`);
  const text = upsert(['$1', '$2', '$3', '$4', '$5', '$6', '$7']);
  const store = await openPostgresStore({ connectionString });
  closers.push(() => store.close());
  return [
    { name: 'Ebbline recordAnswer on PostgreSQL', run: await answering(store) },
    {
      name: 'pg on PostgreSQL, prepared statement',
      async run() {
        for (let n = 0; n < ANSWERS; n += 1) await client.query({ name: 'save', text, values: rowOf(n) });
      },
    },
  ];
}

function upsert(places: readonly string[]): string {
  const saved = 'value = excluded.value, saved_at = excluded.saved_at, version = excluded.version';
  return `insert into draft_field (${COLUMNS}) values (${places}) on conflict (site_id, visit_id, path) do update set ${saved}`;
}

function rowOf(n: number): string[] {
  return ['site', 'visit', pathOf(n), JSON.stringify(ANSWER), 'member', new Date().toISOString(), String(n)];
}

function pathOf(n: number): string {
  return PATHS[n % PATHS.length] ?? '';
}
