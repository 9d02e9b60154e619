import { randomBytes } from 'node:crypto';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { verify } from '../../src/store/verify.ts';
import { findLost, integrityOf, Promised, parseAcknowledged } from '../powercut/acknowledged.ts';
import { startWorkload, untilKilled } from '../powercut/runWorkload.ts';
import type { Acknowledged } from '../powercut/workload.ts';

/** EBBLINE_LONG=1 asks for ten times as many. */
const ROUNDS = process.env.EBBLINE_LONG ? 200 : 10;
const LONGEST_LIFE_MS = 300;
/** More than any process can save before it is killed. */
const MORE_THAN_ENOUGH = 1_000_000;
const ROUND_MS = 15_000;

let root = '';
beforeAll(() => {
  // On a disk, as the data of a practice: in memory it writes many times as much before it is killed.
  root = mkdtempSync(join(existsSync('/var/tmp') ? '/var/tmp' : tmpdir(), 'ebbline-kill-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

test(
  `${ROUNDS} times killed while it writes, the store opens, is whole, and has every answer that was acknowledged`,
  async () => {
    const folder = join(root, 'data');
    const key = randomBytes(32);
    const promised = new Promised();
    let acknowledged = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      // A slow machine may answer nothing but the first: the last round lives until a visit was closed.
      const firstSign = round === ROUNDS - 1 ? 'closed' : 'answer';
      const lines = await writeUntilKilled(folder, key, firstSign, Math.random() * LONGEST_LIFE_MS);
      for (const done of lines) promised.add(done);
      acknowledged += lines.length;
      // The lock of the killed process is still there and is taken over.
      const store = await openSqliteStore({ folder, key });
      try {
        expect(await integrityOf(store)).toBe('ok');
        expect(await findLost(store, promised)).toEqual([]);
        expect((await verify(store.db)).problems).toEqual([]);
      } finally {
        await store.close();
      }
    }
    // Each round acknowledges at least the answer it waited for.
    expect(acknowledged).toBeGreaterThanOrEqual(ROUNDS);
    expect(promised.closed.size).toBeGreaterThan(0);
  },
  ROUNDS * ROUND_MS,
);

/** Kills the writer some milliseconds after its first acknowledgement of this kind and returns what it had acknowledged by then. */
async function writeUntilKilled(folder: string, key: Buffer, firstSign: Acknowledged['kind'], lifeMs: number) {
  const child = startWorkload({ folder, key, ackFile: '-', answers: MORE_THAN_ENOUGH });
  const gone = untilKilled(child);
  let text = '';
  let isDoomed = false;
  child.stdout?.on('data', (chunk: Buffer) => {
    text += chunk.toString();
    if (isDoomed || !text.includes(`"kind":"${firstSign}"`)) return;
    isDoomed = true;
    setTimeout(() => child.kill('SIGKILL'), lifeMs);
  });
  await gone;
  return parseAcknowledged(text);
}
