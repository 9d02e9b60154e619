import { randomBytes } from 'node:crypto';
import { appendFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 as uuid } from 'uuid';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createPractice } from '../../src/actions/createPractice.ts';
import { backupCommand } from '../../src/cli/backupCommand.ts';
import { restoreCommand } from '../../src/cli/restoreCommand.ts';
import { verifyCommand } from '../../src/cli/verifyCommand.ts';
import { demoPractice } from '../../src/content/demo/practice.ts';
import { setUpSqliteStore, unlockSqliteStore } from '../../src/store/setUpStore.ts';
import { cliIoOf } from '../cliIo.ts';

const PASSPHRASE = 'a passphrase for tests';
const ioWith = (secret: string | undefined) => cliIoOf('', { askSecret: () => Promise.resolve(secret) });

let folder: string;
let data: string;
let recoveryKey: string;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-cli-'));
  data = join(folder, 'data');
  const made = await setUpSqliteStore({ folder: data, passphrase: PASSPHRASE, random: randomBytes });
  recoveryKey = made.recoveryKey;
  await made.store.close();
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('back up, restore elsewhere, verify both', async () => {
  const backup = join(folder, 'backup');
  const io = ioWith(PASSPHRASE);
  expect(await backupCommand(backup, { data }, io)).toBe(0);
  expect(io.out.join()).toMatch(/Backup made in .*opened again and checked: 0 people, 0 visits, \d+ logged changes?\./);

  const restored = join(folder, 'restored');
  const restoring = ioWith(PASSPHRASE);
  expect(await restoreCommand(backup, restored, {}, restoring)).toBe(0);
  expect(restoring.out.join()).toMatch(/as it was at 2026-11-25T10:36:00\.000Z, and checked/);

  for (const place of [restored, backup, data]) {
    const verifying = ioWith(PASSPHRASE);
    expect(await verifyCommand(place, {}, verifying)).toBe(0);
    expect(verifying.out.join()).toMatch(/all as they were written/);
  }
});

test('backup and verify work beside the running server, and verify changes nothing', async () => {
  const { store } = await unlockSqliteStore(data, { passphrase: PASSPHRASE });
  try {
    expect(await backupCommand(join(folder, 'backup'), { data }, ioWith(PASSPHRASE))).toBe(0);
    expect(await verifyCommand(data, {}, ioWith(PASSPHRASE))).toBe(0);
  } finally {
    await store.close();
  }
  const before = readFileSync(join(data, 'ebbline.db'));
  expect(await verifyCommand(data, {}, ioWith(PASSPHRASE))).toBe(0);
  expect(readFileSync(join(data, 'ebbline.db')).equals(before)).toBe(true);
});

test('verify says which row is not as it was written, with exit 1', async () => {
  const { store } = await unlockSqliteStore(data, { passphrase: PASSPHRASE });
  const { siteId } = await createPractice(
    { db: store.db, now: () => '2026-11-25T08:00:00.000Z', newId: uuid, random: randomBytes },
    { practice: demoPractice, locale: 'en-GB', firstMember: { name: 'Test Lead', roles: ['lead'] } },
  );
  await store.db.updateTable('member').set({ name: 'Somebody Else' }).where('siteId', '=', siteId).execute();
  await store.close();
  const io = ioWith(PASSPHRASE);
  expect(await verifyCommand(data, {}, io)).toBe(1);
  expect(io.out.join()).toMatch(/^member /);
  expect(io.err.join()).toMatch(/1 is not as written/);
});

test('the printed recovery key opens it too', async () => {
  expect(await verifyCommand(data, { recoveryKey: true }, ioWith(recoveryKey))).toBe(0);
});

describe('one sentence and exit 2', () => {
  test.each<[string, () => Promise<unknown>, RegExp]>([
    ['no passphrase', () => say(undefined, (io) => verifyCommand(data, {}, io)), /^passphrase: is needed: set EBBLINE_PASSPHRASE/],
    ['no recovery key', () => say(undefined, (io) => verifyCommand(data, { recoveryKey: true }, io)), /set EBBLINE_RECOVERY_KEY/],
    ['a wrong passphrase', () => say('not this one at all', (io) => verifyCommand(data, {}, io)), /^This passphrase does not open/],
    ['a mistyped recovery key', () => say('ABCD', (io) => verifyCommand(data, { recoveryKey: true }, io)), /typing error/],
    ['no data there', () => say(PASSPHRASE, (io) => verifyCommand(join(folder, 'nowhere'), {}, io)), /nowhere/],
    ['no backup there', () => say(PASSPHRASE, (io) => restoreCommand(data, join(folder, 'r'), {}, io)), /no complete backup/],
    ['a folder in use', () => say(PASSPHRASE, (io) => backupCommand(data, { data }, io)), /not empty/],
  ])('%s', async (_, run, sentence) => {
    expect(await run()).toMatch(sentence);
  });

  async function say(secret: string | undefined, run: (io: ReturnType<typeof cliIoOf>) => Promise<number>): Promise<string> {
    const io = ioWith(secret);
    expect(await run(io)).toBe(2);
    expect(io.err).toHaveLength(1);
    expect(io.err[0]).not.toMatch(/ at .*\.ts:|Error:/);
    return io.err[0] ?? '';
  }
});

test('nothing is restored over what is there', async () => {
  const backup = join(folder, 'backup');
  await backupCommand(backup, { data }, ioWith(PASSPHRASE));
  const occupied = join(folder, 'occupied');
  await restoreCommand(backup, occupied, {}, ioWith(PASSPHRASE));
  const before = readdirSync(occupied);
  writeFileSync(join(occupied, 'mine.txt'), 'mine');
  expect(await restoreCommand(backup, occupied, {}, ioWith(PASSPHRASE))).toBe(2);
  expect(readdirSync(occupied)).toEqual([...before, 'mine.txt'].sort());
});

test('a damaged backup is not restored', async () => {
  const backup = join(folder, 'backup');
  await backupCommand(backup, { data }, ioWith(PASSPHRASE));
  appendFileSync(join(backup, 'keys.json'), 'x');
  const io = ioWith(PASSPHRASE);
  expect(await restoreCommand(backup, join(folder, 'restored'), {}, io)).toBe(2);
  expect(io.err.join()).toMatch(/damaged/);
  expect(existsSync(join(folder, 'restored', 'ebbline.db'))).toBe(false);
});
