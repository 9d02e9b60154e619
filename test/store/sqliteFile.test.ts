import { type ChildProcess, spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, describe, expect, test } from 'vitest';
import { StoreDamagedError, StoreError, StoreInUseError, StoreNewerError, WrongPassphraseError } from '../../src/store/errors.ts';
import { dataFileOf } from '../../src/store/files.ts';
import { processStart } from '../../src/store/lockFile.ts';
import { latestVersion, type Migration, readSchemaVersion } from '../../src/store/migrations/migrate.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { listSites } from '../../src/store/read/sites.ts';
import { setUpSqliteStore, unlockSqliteStore } from '../../src/store/setUpStore.ts';
import { verify } from '../../src/store/verify.ts';
import { filledFolder, fingerprint, PASSPHRASE, temporaryFolders } from './folder.ts';
import { testPractice } from './practice.ts';

const folders = temporaryFolders();
const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
  folders.clear();
});

const LATEST = latestVersion(migrations);
/** The page of SQLCipher 4. */
const PAGE_BYTES = 4096;
const next: Migration = {
  version: LATEST + 1,
  name: 'next',
  statements: ({ text, end }) => [`create table swatch (id ${text} primary key ${end}`],
};

describe('the data file', () => {
  test('is durable, checks its keys, sorts in memory and is encrypted whole', async () => {
    const folder = folders.make();
    const { store } = await setUpSqliteStore({ folder, passphrase: PASSPHRASE, random: randomBytes });
    const pragma = async (name: string) =>
      Object.values((await sql<object>`${sql.raw(`pragma ${name}`)}`.execute(store.db)).rows[0] ?? {})[0];
    expect(await pragma('journal_mode')).toBe('wal');
    expect(await pragma('synchronous')).toBe(2);
    expect(await pragma('foreign_keys')).toBe(1);
    expect(await pragma('temp_store')).toBe(2);
    const tables = await sql<{
      name: string;
      strict: number;
    }>`select name, strict from pragma_table_list where schema = 'main' and name not like 'sqlite_%'`.execute(store.db);
    expect(tables.rows.filter(({ strict }) => strict !== 1)).toEqual([]);
    expect(tables.rows.length).toBe(22);

    await (await testPractice(store)).newPatient('Plainly Readable');
    // The write-ahead log too, while the store is open.
    for (const name of readdirSync(folder).filter((file) => file.startsWith('ebbline.db'))) {
      const bytes = readFileSync(join(folder, name)).toString('latin1');
      for (const plain of ['SQLite format 3', 'Plainly', 'plainly readable', 'Tern Quay', 'create table'])
        expect([name, bytes.includes(plain)]).toEqual([name, false]);
    }
    await store.close();
    expect(readdirSync(folder).sort()).toEqual(['ebbline.db', 'keys.json']);
  });

  test('that fills its disk says so, though SQLite has taken the transaction back by itself', async () => {
    const { store } = await setUpSqliteStore({ folder: folders.make(), passphrase: PASSPHRASE, random: randomBytes });
    const practice = await testPractice(store);
    const pages = Object.values((await sql<object>`pragma page_count`.execute(store.db)).rows[0] ?? {})[0];
    await sql`pragma max_page_count = ${sql.lit(pages)}`.execute(store.db);
    const long = 'x'.repeat(190);
    const fill = async () => {
      for (let i = 0; i < 2_000; i += 1) await practice.newPatient(`${long} ${i}`);
    };
    await expect(fill()).rejects.toMatchObject({ code: 'SQLITE_FULL' });
    await sql`pragma max_page_count = 1000000`.execute(store.db);
    await practice.newPatient('After it');
    expect((await verify(store.db)).problems).toEqual([]);
    await store.close();
  });

  test('opens again with what was written', async () => {
    const folder = folders.make();
    await filledFolder(folder);
    const { store } = await unlockSqliteStore(folder, { passphrase: PASSPHRASE });
    expect(await listSites(store.db)).toMatchObject([{ name: 'Tern Quay Dental' }]);
    expect((await verify(store.db)).ok).toBe(true);
    await store.close();
  });

  test('that is missing is not silently made anew', async () => {
    const folder = folders.make();
    await filledFolder(folder);
    rmSync(dataFileOf(folder));
    const before = fingerprint(folder);
    await expect(unlockSqliteStore(folder, { passphrase: PASSPHRASE })).rejects.toMatchObject({ code: 'STORE_MISSING' });
    expect(fingerprint(folder)).toEqual(before);
  });

  test('a set-up in a folder that has keys is refused and changes nothing', async () => {
    const folder = folders.make();
    await filledFolder(folder);
    const before = fingerprint(folder);
    await expect(setUpSqliteStore({ folder, passphrase: 'other', random: randomBytes })).rejects.toMatchObject({ code: 'STORE_EXISTS' });
    expect(fingerprint(folder)).toEqual(before);
  });
});

/** Copies the files of an open store: what a power cut leaves, with the log not yet folded into the file. */
async function cutOff(migrationSteps = migrations): Promise<{ folder: string; key: Buffer }> {
  const folder = folders.make();
  const { key } = await filledFolder(folder);
  const store = await openSqliteStore({ folder, key, migrations: migrationSteps });
  await testPractice(store, 'Second practice');
  const copy = folders.make();
  for (const name of ['ebbline.db', 'ebbline.db-wal', 'keys.json']) copyFileSync(join(folder, name), join(copy, name));
  await store.close();
  return { folder: copy, key };
}

/** What the folder holds besides the index of the log, which holds no data and is made anew at every opening. */
function dataOf(folder: string): Record<string, string> {
  const { 'ebbline.db-shm': _index, ...rest } = fingerprint(folder);
  return rest;
}

describe('what cannot be opened stays as it is', () => {
  test('a wrong passphrase', async () => {
    const folder = folders.make();
    await filledFolder(folder);
    const before = fingerprint(folder);
    await expect(unlockSqliteStore(folder, { passphrase: 'wrong' })).rejects.toThrow(WrongPassphraseError);
    expect(fingerprint(folder)).toEqual(before);
  });

  test.each([
    ['its first page', (size: number) => ({ at: 40, size })],
    ['a page in the middle', (size: number) => ({ at: Math.floor(size / 2), size })],
    ['its last page', (size: number) => ({ at: size - 100, size })],
  ])('a file with one wrong bit in %s', async (_where, place) => {
    const folder = folders.make();
    await filledFolder(folder);
    const file = dataFileOf(folder);
    const bytes = readFileSync(file);
    const { at } = place(bytes.length);
    bytes[at] = (bytes[at] ?? 0) ^ 1;
    writeFileSync(file, bytes);
    const before = fingerprint(folder);
    await expect(unlockSqliteStore(folder, { passphrase: PASSPHRASE })).rejects.toThrow(StoreDamagedError);
    expect(fingerprint(folder)).toEqual(before);
  });

  // To nothing too, and between two pages as within one: the engine takes a file of no page for a new one.
  test('a file cut off anywhere', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const whole = readFileSync(dataFileOf(folder));
    const half = Math.floor(whole.length / PAGE_BYTES / 2) * PAGE_BYTES;
    const cuts = [0, 1, 2, 100, PAGE_BYTES, half, half + 1, Math.floor(whole.length * 0.9), whole.length - PAGE_BYTES, whole.length - 1];
    for (const bytes of cuts) {
      writeFileSync(dataFileOf(folder), whole.subarray(0, bytes));
      const before = fingerprint(folder);
      const opening = openSqliteStore({ folder, key }).then((store) => store.close());
      await expect(opening, `cut off to ${bytes} bytes`).rejects.toThrow(StoreDamagedError);
      expect(fingerprint(folder)).toEqual(before);
    }
  });

  test('a file with the keys of another', async () => {
    const [folder, other] = [folders.make(), folders.make()];
    await filledFolder(folder);
    await filledFolder(other);
    copyFileSync(join(other, 'keys.json'), join(folder, 'keys.json'));
    const before = fingerprint(folder);
    await expect(unlockSqliteStore(folder, { passphrase: PASSPHRASE })).rejects.toThrow(/belongs to another key file/);
    expect(fingerprint(folder)).toEqual(before);
  });

  test('a file of a newer program, closed properly or cut off', async () => {
    const steps = [...migrations, next];
    const { folder: cut, key } = await cutOff(steps);
    const folder = folders.make();
    for (const name of readdirSync(cut)) copyFileSync(join(cut, name), join(folder, name));
    await (await openSqliteStore({ folder, key, migrations: steps })).close();
    expect(readdirSync(folder).sort()).toEqual(['ebbline.db', 'keys.json']);
    for (const place of [folder, cut]) {
      const before = dataOf(place);
      await expect(openSqliteStore({ folder: place, key })).rejects.toThrow(StoreNewerError);
      expect(dataOf(place)).toEqual(before);
    }
    const store = await openSqliteStore({ folder: cut, key, migrations: steps });
    expect(await listSites(store.db)).toHaveLength(2);
    await store.close();
  });

  test('a damaged file that was cut off keeps its log', async () => {
    const { folder, key } = await cutOff();
    // All of it: a page whose newer copy stands in the log is not missed.
    writeFileSync(dataFileOf(folder), readFileSync(dataFileOf(folder)).fill(7));
    const before = dataOf(folder);
    await expect(openSqliteStore({ folder, key })).rejects.toThrow(StoreDamagedError);
    expect(dataOf(folder)).toEqual(before);
  });

  test('a folder that another server uses', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const store = await openSqliteStore({ folder, key });
    const before = fingerprint(folder);
    await expect(unlockSqliteStore(folder, { passphrase: PASSPHRASE })).rejects.toThrow(StoreInUseError);
    await expect(openSqliteStore({ folder, key })).rejects.toThrow(/in use by process \d+ on this computer/);
    expect(fingerprint(folder)).toEqual(before);
    // The holder is not disturbed, and a reader beside it may come and go.
    const reader = await openSqliteStore({ folder, key, readOnly: true });
    expect((await verify(reader.db)).ok).toBe(true);
    await expect(sql`delete from patient`.execute(reader.db)).rejects.toThrow(/readonly/);
    await reader.close();
    await testPractice(store, 'Second practice');
    await store.close();
    await (await openSqliteStore({ folder, key })).close();
  });
});

describe('the lock', () => {
  const lockOf = (folder: string) => join(folder, 'ebbline.lock');
  const opens = async (folder: string, key: Buffer) => {
    const store = await openSqliteStore({ folder, key });
    const text = readFileSync(lockOf(folder), 'utf8');
    await store.close();
    expect(existsSync(lockOf(folder))).toBe(false);
    return text;
  };

  test('says who holds the folder, and is taken over from a process that is gone', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const mine = { host: hostname(), pid: process.pid, startedAt: processStart(process.pid) };
    expect(JSON.parse(await opens(folder, key))).toEqual(mine);
    const gone = spawn('true');
    await new Promise((resolve) => gone.once('exit', resolve));
    for (const text of [JSON.stringify({ ...mine, pid: gone.pid }), '', '{', 'null']) {
      writeFileSync(lockOf(folder), text);
      expect(JSON.parse(await opens(folder, key))).toEqual(mine);
    }
    expect(readdirSync(folder).sort()).toEqual(['ebbline.db', 'keys.json']);
  });

  test('is taken over when another program got the same process number, and not from a living one', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const living = spawn('sleep', ['60']);
    children.push(living);
    const holder = { host: hostname(), pid: living.pid, startedAt: processStart(living.pid ?? 0) };
    expect(holder.startedAt).not.toBeNull();
    writeFileSync(lockOf(folder), JSON.stringify(holder));
    await expect(openSqliteStore({ folder, key })).rejects.toThrow(StoreInUseError);
    expect(JSON.parse(readFileSync(lockOf(folder), 'utf8'))).toEqual(holder);
    writeFileSync(lockOf(folder), JSON.stringify({ ...holder, startedAt: 'an earlier start' }));
    await opens(folder, key);
  });

  test('of another computer is never taken over, because it cannot be asked', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    writeFileSync(lockOf(folder), JSON.stringify({ host: 'front-desk-2', pid: 1, startedAt: null }));
    await expect(openSqliteStore({ folder, key })).rejects.toThrow(/on the computer front-desk-2/);
  });

  test('of many openings at once exactly one succeeds', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const settled = await Promise.allSettled(Array.from({ length: 6 }, () => openSqliteStore({ folder, key })));
    const opened = settled.filter((one) => one.status === 'fulfilled');
    expect(opened).toHaveLength(1);
    for (const { value } of opened) await value.close();
  });
});

describe('before a step forward', () => {
  test('the file is copied, checked, and the copy opens as it was', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const store = await openSqliteStore({ folder, key, migrations: [...migrations, next], now: () => '2026-03-04T09:36:12.345Z' });
    expect(await readSchemaVersion(store.db)).toBe(LATEST + 1);
    await store.close();
    const copy = `ebbline.db.before-version-${LATEST + 1}-20260304T093612345Z`;
    expect(readdirSync(folder).sort()).toEqual(['ebbline.db', copy, 'keys.json']);
    const old = folders.make();
    copyFileSync(join(folder, copy), dataFileOf(old));
    const before = await openSqliteStore({ folder: old, key });
    expect(await readSchemaVersion(before.db)).toBe(LATEST);
    expect((await verify(before.db)).ok).toBe(true);
    await before.close();
  });

  test('a new file needs no copy, and a failed step leaves the copy and the old version', async () => {
    const folder = folders.make();
    const key = randomBytes(32);
    await (await openSqliteStore({ folder, key, create: true })).close();
    expect(readdirSync(folder)).toEqual(['ebbline.db']);
    const bad: Migration = { version: LATEST + 1, name: 'bad', statements: () => ['nonsense'] };
    await expect(openSqliteStore({ folder, key, migrations: [...migrations, bad] })).rejects.toThrow(/syntax error/);
    expect(readdirSync(folder).some((name) => name.includes('.before-version-'))).toBe(true);
    const store = await openSqliteStore({ folder, key });
    expect(await readSchemaVersion(store.db)).toBe(LATEST);
    await store.close();
  });

  test('a key of the wrong length is refused', async () => {
    await expect(openSqliteStore({ folder: folders.make(), key: randomBytes(16), create: true })).rejects.toThrow(RangeError);
    await expect(openSqliteStore({ folder: folders.make(), key: randomBytes(32) })).rejects.toThrow(StoreError);
  });
});
