import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { demoMembers } from '../../src/content/demo/members.ts';
import type { PracticeOption } from '../../src/server/askPractice.ts';
import { DEMO_PASSPHRASE, openDemo, openReal } from '../../src/server/openPractice.ts';
import { listMembers } from '../../src/store/read/members.ts';
import { listPatients } from '../../src/store/read/patients.ts';
import { findPractice, listSites } from '../../src/store/read/sites.ts';
import { unlockSqliteStore } from '../../src/store/setUpStore.ts';
import { verify } from '../../src/store/verify.ts';

const now = () => '2026-11-25T09:00:00.000Z';
const passphrase = 'a long enough passphrase';
const answers: Record<PracticeOption, string> = {
  'practice-name': 'Practice of the Test',
  'member-name': 'Lead Hygienist',
  'meter-name': 'Meter of the test',
  'meter-lowest': '10',
  'meter-highest': '9000',
  'meter-cutoff': '2500',
  'meter-countdown': '30',
};
const options = { now, interactive: false, begin: true, passphrase, practiceOptions: answers };

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-open-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a real practice', () => {
  test('begins empty, with its own cut-off, the strictest rules and a recovery key; and opens again', async () => {
    const begun = await openReal({ ...options, folder });
    expect(begun.recoveryKey).toMatch(/^[0-9A-Z-]{20,}$/);
    const { practice } = (await findPractice(begun.store.db, begun.scope)) ?? {};
    expect(practice?.meters).toMatchObject([
      { name: 'Meter of the test', cutoffRlu: 2500, lowestRlu: 10, highestRlu: 9000, cvAnalyticalAssumed: true },
    ]);
    expect(practice?.settings).toMatchObject({ jurisdiction: 'unknown', bitewingMonths: null });
    expect([practice?.invented, practice?.shelf, await listPatients(begun.store.db, begun.scope)]).toEqual([false, [], []]);
    await begun.store.close();

    const again = await openReal({ ...options, folder, begin: false });
    expect(again).toMatchObject({ firstMemberId: begun.firstMemberId, invented: false });
    await again.store.close();
    expect(readFileSync(join(folder, 'ebbline.db')).includes('Practice of the Test')).toBe(false);
  });

  test.each([
    ['meter-cutoff', undefined, /^meter-cutoff: needs an answer/],
    ['meter-cutoff', 'about 2500', /^meter-cutoff: must be a number/],
    ['meter-cutoff', '9500', /^meter-cutoff: 9500 must lie between/],
    ['meter-highest', '5', /^meter-highest: 5 must be above the lowest reading/],
    ['meter-lowest', '-5', /^meter-lowest: must be a number, 0 or more/],
    ['practice-name', '  ', /^practice-name: needs an answer/],
  ] as const)('%s = %s is refused by name, and nothing is left behind', async (option, value, message) => {
    const { [option]: _left, ...others } = answers;
    const practiceOptions = value === undefined ? others : { ...others, [option]: value };
    await expect(openReal({ ...options, folder, practiceOptions })).rejects.toThrow(message);
    const begun = await openReal({ ...options, folder });
    await begun.store.close();
  });

  test('a short passphrase, a wrong one, none at all, a second server and a missing practice are five sentences', async () => {
    await expect(openReal({ ...options, folder, passphrase: 'short' })).rejects.toThrow(/^passphrase: must have 12 characters/);
    await expect(openReal({ ...options, folder, passphrase: undefined })).rejects.toThrow(/^passphrase: needs an answer/);
    await expect(openReal({ ...options, folder, begin: false })).rejects.toThrow(/There is no practice in .* yet/);
    const begun = await openReal({ ...options, folder });
    await expect(openReal({ ...options, folder })).rejects.toThrow(/in use/);
    await begun.store.close();
    await expect(openReal({ ...options, folder, passphrase: 'not the passphrase' })).rejects.toThrow(/does not open/);
  });
});

test('the invented practice is made whole on its first start, verifies, and opens again unchanged', async () => {
  const made = await openDemo({ folder, now });
  const { db } = made.store;
  expect((await findPractice(db, made.scope))?.practice).toMatchObject({ name: 'Tern Quay Dental', invented: true });
  expect((await listMembers(db, made.scope)).map((m) => m.name).sort()).toEqual(demoMembers.map((m) => m.name).sort());
  expect(await listPatients(db, made.scope)).toHaveLength(80);
  expect(await verify(db)).toMatchObject({ ok: true, problems: [] });
  const before = await db.selectFrom('chainHead').selectAll().execute();
  await made.store.close();

  const again = await openDemo({ folder, now });
  expect(await again.store.db.selectFrom('chainHead').selectAll().execute()).toEqual(before);
  await again.store.close();
  await (await unlockSqliteStore(folder, { passphrase: DEMO_PASSPHRASE })).store.close();
});

test('a first start that is broken off half-way leaves nothing, and the next one makes the practice', async () => {
  let timeMs = Date.parse(now());
  const slowly = () => {
    timeMs += 60_000;
    return new Date(timeMs).toISOString();
  };
  const breakOff = () => {
    throw new Error('broken off');
  };
  await expect(openDemo({ folder, now: slowly, say: breakOff })).rejects.toThrow('broken off');
  const { store } = await unlockSqliteStore(folder, { passphrase: DEMO_PASSPHRASE });
  expect([await listSites(store.db), await store.db.selectFrom('change').selectAll().execute()]).toEqual([[], []]);
  await store.close();
  const made = await openDemo({ folder, now });
  expect(await listPatients(made.store.db, made.scope)).toHaveLength(80);
  await made.store.close();
});
