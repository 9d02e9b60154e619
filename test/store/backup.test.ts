import { randomBytes } from 'node:crypto';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { backupTo, restoreFrom } from '../../src/store/backup.ts';
import { StoreDamagedError } from '../../src/store/errors.ts';
import { dataFileOf } from '../../src/store/files.ts';
import { openKeys } from '../../src/store/keyEnvelope.ts';
import { latestVersion } from '../../src/store/migrations/migrate.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { listPatients } from '../../src/store/read/patients.ts';
import { setUpSqliteStore, unlockSqliteStore } from '../../src/store/setUpStore.ts';
import { verify } from '../../src/store/verify.ts';
import { filledFolder, fingerprint, PASSPHRASE, temporaryFolders } from './folder.ts';
import { testPractice } from './practice.ts';

const folders = temporaryFolders();
afterEach(() => folders.clear());

const MADE_AT = '2026-03-04T18:00:00.000Z';

async function backedUp() {
  const folder = folders.make();
  const { key, recoveryKey, patientId } = await filledFolder(folder);
  const into = join(folders.make(), 'backup');
  const report = backupTo({ folder, key, into, madeAt: MADE_AT });
  return { folder, key, recoveryKey, patientId, into, report };
}

describe('a backup', () => {
  test('holds the data encrypted, the keys and what was counted', async () => {
    const { into, report, folder } = await backedUp();
    expect(readdirSync(into).sort()).toEqual(['backup.json', 'ebbline.db', 'keys.json']);
    expect(report).toMatchObject({ madeAt: MADE_AT, schemaVersion: latestVersion(migrations), rows: { patient: 1, site: 1, member: 4 } });
    expect(report.heads.map(({ stream, seq }) => [stream, seq > 0])).toEqual([
      ['access', false],
      ['record', true],
    ]);
    expect(JSON.parse(readFileSync(join(into, 'backup.json'), 'utf8'))).toEqual(report);
    expect(readFileSync(dataFileOf(into)).includes('Plainly')).toBe(false);
    expect(readFileSync(join(into, 'keys.json'))).toEqual(readFileSync(join(folder, 'keys.json')));
  });

  test('is restored into an empty folder, opens with the passphrase or the recovery key, and verifies', async () => {
    const { into, recoveryKey, patientId, report } = await backedUp();
    const folder = join(folders.make(), 'new', 'place');
    const key = await openKeys(into, { recoveryKey });
    expect(restoreFrom({ backup: into, key, folder })).toEqual(report);
    const { store } = await unlockSqliteStore(folder, { passphrase: PASSPHRASE });
    expect((await store.db.selectFrom('patient').select('id').execute()).map(({ id }) => id)).toEqual([patientId]);
    expect((await verify(store.db)).ok).toBe(true);
    await store.close();
  });

  test('is made while the server writes, and holds every answer acknowledged before it began', async () => {
    const folder = folders.make();
    const { store, key } = await setUpSqliteStore({ folder, passphrase: PASSPHRASE, random: randomBytes });
    const practice = await testPractice(store);
    for (let day = 0; day < 3; day += 1) {
      await practice.newPatient(`Before ${day}`);
      // The store stays open: its log is not folded in yet, and more is written right after.
      const into = join(folders.make(), `day-${day}`);
      const report = backupTo({ folder, key, into, madeAt: MADE_AT });
      await practice.newPatient(`After ${day}`);
      expect(report.rows.patient).toBe(2 * day + 1);
      const copy = await openSqliteStore({ folder: into, key, readOnly: true });
      const names = (await listPatients(copy.db, practice.scope)).map(({ profile }) => profile.name);
      expect(names).toContain(`Before ${day}`);
      expect(names).not.toContain(`After ${day}`);
      expect((await verify(copy.db)).ok).toBe(true);
      await copy.close();
    }
    expect((await verify(store.db)).ok).toBe(true);
    await store.close();
  });

  test('never writes over anything', async () => {
    const { folder, key, into } = await backedUp();
    const before = fingerprint(into);
    expect(() => backupTo({ folder, key, into, madeAt: MADE_AT })).toThrow(/not empty/);
    expect(() => restoreFrom({ backup: into, key, folder })).toThrow(/not empty/);
    expect(fingerprint(into)).toEqual(before);
    const store = await openSqliteStore({ folder, key });
    await store.close();
  });

  test('that is damaged, incomplete or not what it says is not restored, and leaves the folder empty', async () => {
    const { key, into } = await backedUp();
    const changed = (name: string, change: (bytes: Buffer) => Buffer) => {
      const copy = folders.make();
      for (const file of readdirSync(into)) copyFileSync(join(into, file), join(copy, file));
      writeFileSync(join(copy, name), change(readFileSync(join(copy, name))));
      return copy;
    };
    const flipped = changed('ebbline.db', (bytes) => {
      // In the second page: the last one may be free, and a free page is left behind by a copy.
      const place = 4_096 + 50;
      bytes[place] = (bytes[place] ?? 0) ^ 1;
      return bytes;
    });
    const miscounted = changed('backup.json', (bytes) => Buffer.from(bytes.toString().replace('"patient": 1', '"patient": 2')));
    const otherEnd = changed('backup.json', (bytes) => Buffer.from(bytes.toString().replace(/"hash": "[0-9a-f]{4}/g, '"hash": "beef')));
    const unreadable = changed('backup.json', (bytes) => bytes.subarray(0, 20));
    const folder = join(folders.make(), 'restored');
    for (const backup of [flipped, miscounted, otherEnd, unreadable]) {
      expect(() => restoreFrom({ backup, key, folder })).toThrow(StoreDamagedError);
      expect(existsSync(folder) ? readdirSync(folder) : []).toEqual([]);
    }
    rmSync(join(flipped, 'backup.json'));
    expect(() => restoreFrom({ backup: flipped, key, folder })).toThrow(/no complete backup/);
    expect(() => restoreFrom({ backup: into, key: randomBytes(32), folder })).toThrow(StoreDamagedError);
  });

  test('that cannot be made leaves no half of one', async () => {
    const folder = folders.make();
    const { key } = await filledFolder(folder);
    const into = join(folders.make(), 'backup');
    const bytes = readFileSync(dataFileOf(folder));
    // In the second page: the last one may be free, and a free page is left behind by a copy.
    const place = 4_096 + 50;
    bytes[place] = (bytes[place] ?? 0) ^ 1;
    writeFileSync(dataFileOf(folder), bytes);
    expect(() => backupTo({ folder, key, into, madeAt: MADE_AT })).toThrow();
    expect(existsSync(into)).toBe(false);
    mkdirSync(into);
    expect(() => backupTo({ folder: into, key, into: join(into, 'b'), madeAt: MADE_AT })).toThrow();
    expect(readdirSync(into)).toEqual([]);
  });
});
