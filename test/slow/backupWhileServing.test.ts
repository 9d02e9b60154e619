import { randomBytes } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { backupTo, restoreFrom } from '../../src/store/backup.ts';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { verify } from '../../src/store/verify.ts';
import { findLost, Promised, parseAcknowledged } from '../powercut/acknowledged.ts';
import { startWorkload, untilKilled } from '../powercut/runWorkload.ts';

const BACKUPS = 8;
const MORE_THAN_ENOUGH = 1_000_000;

let root = '';
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'ebbline-serving-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const countClosed = (text: string) => parseAcknowledged(text).filter(({ kind }) => kind === 'closed').length;

test('backups made while another process writes hold every answer acknowledged before, verify, and do not stop the writer', async () => {
  const folder = join(root, 'data');
  const key = randomBytes(32);
  mkdirSync(folder);
  // What wraps the key does not matter here; a backup takes the file along.
  writeFileSync(join(folder, 'keys.json'), '{}');
  const child = startWorkload({ folder, key, ackFile: '-', answers: MORE_THAN_ENOUGH });
  const gone = untilKilled(child);
  let text = '';
  child.stdout?.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  try {
    let grown = 0;
    let first = Number.POSITIVE_INFINITY;
    for (let made = 0; made < BACKUPS; made += 1) {
      const closedBefore = countClosed(text);
      // Let the writer close another visit, which lengthens the log; this thread stands still while a backup is made.
      while (countClosed(text) <= closedBefore) await new Promise((resolve) => setTimeout(resolve, 10));
      const promised = new Promised();
      for (const done of parseAcknowledged(text)) promised.add(done);
      const into = join(root, `backup-${made}`);
      const report = backupTo({ folder, key, into, madeAt: '2026-03-04T18:00:00.000Z' });
      const restored = join(root, `restored-${made}`);
      restoreFrom({ backup: into, key, folder: restored });
      const store = await openSqliteStore({ folder: restored, key });
      expect(await findLost(store, promised)).toEqual([]);
      expect((await verify(store.db)).problems).toEqual([]);
      await store.close();
      // What a backup holds never shrinks; what is acknowledged late may have been in the one before.
      expect(report.rows.change).toBeGreaterThanOrEqual(grown);
      grown = report.rows.change ?? 0;
      first = Math.min(first, grown);
    }
    expect(grown).toBeGreaterThan(first);
  } finally {
    child.kill('SIGKILL');
    await gone;
  }
});
