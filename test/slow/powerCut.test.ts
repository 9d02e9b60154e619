import { execFileSync } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openSqliteStore } from '../../src/store/openStore.ts';
import { verify } from '../../src/store/verify.ts';
import { findLost, integrityOf, Promised, parseAcknowledged } from '../powercut/acknowledged.ts';
import { DiskModel, type DiskOp, type Fate, readRecord, SECTOR } from '../powercut/diskModel.ts';
import { startWorkload, untilKilled } from '../powercut/runWorkload.ts';

/*
 * A power cut keeps what was synced; of what was written and not synced, each write may be on the disk, may not, or may be there in
 * part. The workload runs once under record.c, which notes every write, truncation, sync and acknowledgement in order. Then the disk
 * is rebuilt as many different cuts may have left it, and opened with the real engine.
 */
const SHIM = fileURLToPath(new URL('../powercut/record.c', import.meta.url));
const ACKS = 'acknowledged';
const ANSWERS = 400;
const STATES_FULL = 2000;
const STATES_NORMAL = 200;
const VERIFY_EVERY = 100;

const unavailable = whyUnavailable();
let root = '';
let shim = '';

describe('power cut', () => {
  beforeAll(() => {
    if (unavailable) return;
    // In memory where there is such a place: thousands of states are written and thrown away.
    root = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'ebbline-cut-'));
    shim = join(root, 'record.so');
    execFileSync('cc', ['-shared', '-fPIC', '-O1', '-Wall', '-Werror', '-o', shim, SHIM, '-ldl', '-lpthread']);
  });
  afterAll(() => rmSync(root, { recursive: true, force: true }));

  test('with synchronous=FULL no acknowledged answer is lost and no file is damaged', async ({ skip }) => {
    if (unavailable) skip(unavailable);
    const { ops, key } = await recordWorkload('FULL');
    expect(countOf(ops, 'ebbline.db', 'S')).toBeGreaterThan(1);
    const outcome = await cutOften(ops, key, STATES_FULL);
    expect(outcome).toEqual({ states: STATES_FULL, damaged: [], lost: [], unverified: [] });
  });

  test('the same cuts with synchronous=NORMAL lose acknowledged answers: the harness can fail', async ({ skip }) => {
    if (unavailable) skip(unavailable);
    const { ops, key } = await recordWorkload('NORMAL');
    const { damaged, lost } = await cutOften(ops, key, STATES_NORMAL);
    expect(damaged).toEqual([]);
    expect(lost.length).toBeGreaterThan(STATES_NORMAL / 4);
  });
});

function whyUnavailable(): string | undefined {
  if (process.platform !== 'linux') return 'writes can be recorded on Linux only';
  try {
    execFileSync('cc', ['--version'], { stdio: 'ignore' });
    return undefined;
  } catch {
    return 'there is no C compiler (cc)';
  }
}

async function recordWorkload(synchronous: 'FULL' | 'NORMAL'): Promise<{ ops: DiskOp[]; key: Buffer }> {
  const folder = join(root, `work-${synchronous}`);
  mkdirSync(folder);
  const log = join(root, `log-${synchronous}`);
  const key = randomBytes(32);
  const env = { LD_PRELOAD: shim, EBBLINE_RECORD_FOLDER: folder, EBBLINE_RECORD_LOG: log };
  await untilKilled(startWorkload({ folder, key, ackFile: join(folder, ACKS), answers: ANSWERS, synchronous, env }));
  // The index of the log is shared memory: it is gone after a cut.
  const ops = readRecord(log).filter(({ name }) => name === ACKS || (name.startsWith('ebbline.db') && !name.endsWith('-shm')));
  expect(countOf(ops, ACKS, 'W')).toBeGreaterThan(ANSWERS);
  return { ops, key };
}

function countOf(ops: readonly DiskOp[], file: string, kind: DiskOp['op']): number {
  return ops.filter(({ name, op }) => name === file && op === kind).length;
}

interface Outcome {
  readonly states: number;
  readonly damaged: string[];
  readonly lost: string[];
  readonly unverified: string[];
}

/** Cuts after `states` operations, chosen by chance, half of them right after an acknowledgement, and opens what is left. */
async function cutOften(ops: readonly DiskOp[], key: Buffer, states: number): Promise<Outcome> {
  const random = seeded(20_260_304);
  const acks = ops.flatMap(({ name, op }, index) => (name === ACKS && op === 'W' ? [index] : []));
  const firstAck = acks[0] ?? 0;
  const cuts = Array.from({ length: states }, (_, state) =>
    state % 2 === 0 ? (acks[Math.floor(random() * acks.length)] ?? 0) : firstAck + Math.floor(random() * (ops.length - firstAck)),
  ).sort((a, b) => a - b);
  const outcome: Outcome = { states, damaged: [], lost: [], unverified: [] };
  const disk = new DiskModel();
  const promised = new Promised();
  let done = 0;
  for (const [state, cut] of cuts.entries()) {
    for (; done <= cut; done += 1) {
      const op = ops[done];
      if (op?.name === ACKS) for (const ack of parseAcknowledged(op.data.toString())) promised.add(ack);
      else if (op) disk.apply(op);
    }
    await judge(`cut ${state} after operation ${cut}`, disk.cut(chance(random)), key, promised, outcome, state % VERIFY_EVERY === 0);
  }
  return outcome;
}

async function judge(
  name: string,
  files: Map<string, Buffer>,
  key: Buffer,
  promised: Promised,
  outcome: Outcome,
  isVerified: boolean,
): Promise<void> {
  const folder = join(root, 'state');
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  for (const [file, bytes] of files) writeFileSync(join(folder, file), bytes);
  try {
    const store = await openSqliteStore({ folder, key });
    try {
      const integrity = await integrityOf(store);
      if (integrity !== 'ok') outcome.damaged.push(`${name}: ${integrity}`);
      const lost = await findLost(store, promised);
      if (lost.length > 0) outcome.lost.push(`${name}: ${lost.length}, first ${lost[0]}`);
      if (isVerified)
        for (const { table, id, says } of (await verify(store.db)).problems) outcome.unverified.push(`${name}: ${table} ${id} ${says}`);
    } finally {
      await store.close();
    }
  } catch (error) {
    outcome.damaged.push(`${name}: ${error}`);
  }
}

/** What becomes of the writes of one cut: a disk that kept nearly all, nearly nothing, or anything between. */
function chance(random: () => number): (op: DiskOp, isLast: boolean) => Fate {
  const keep = [0, 0.1, 0.5, 0.9, 1][Math.floor(random() * 5)] ?? 0;
  const tear = [0, 0.2, 1][Math.floor(random() * 3)] ?? 0;
  return ({ data }, isLast) => {
    // The write in flight is the one most likely to be torn.
    if (data.length > SECTOR && (isLast || random() < 0.3) && random() < tear) return tornSectors(data.length, random);
    return random() < keep ? 'kept' : 'dropped';
  };
}

/** Either the beginning of the write or any of its sectors. */
function tornSectors(length: number, random: () => number): boolean[] {
  const sectors = Math.ceil(length / SECTOR);
  const first = Math.floor(random() * (sectors + 1));
  const isPrefix = random() < 0.5;
  return Array.from({ length: sectors }, (_, sector) => (isPrefix ? sector < first : random() < 0.5));
}

/** A small generator with a seed (mulberry32): the same cuts on every run. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
