import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

const UNREADABLE_GRACE_MS = 5_000;

/**
 * Runs `work` while holding a lock folder that names this process, so that two commands started at once take turns.
 * A lock whose process is gone is taken over.
 */
export async function withLock(path, waitingFor, work) {
  let told = false;
  while (!tryTake(path)) {
    if (!told) console.error(`Waiting for another ${waitingFor} to finish ...`);
    told = true;
    await wait(250);
  }
  const release = () => rmSync(path, { recursive: true, force: true });
  process.once('exit', release);
  try {
    return await work();
  } finally {
    process.off('exit', release);
    release();
  }
}

function tryTake(path) {
  try {
    mkdirSync(path);
    writeFileSync(join(path, 'pid'), String(process.pid));
    return true;
  } catch (error) {
    if (error.code !== 'EEXIST') throw error;
  }
  if (isAbandoned(path)) removeAbandoned(path);
  return false;
}

function isAbandoned(path) {
  let pid = 0;
  try {
    pid = Number(readFileSync(join(path, 'pid'), 'utf8'));
  } catch {
    // Either between the holder's mkdir and its write, or the holder died there.
  }
  if (pid > 0) return !isRunning(pid);
  try {
    return Date.now() - statSync(path).mtimeMs > UNREADABLE_GRACE_MS;
  } catch {
    return false;
  }
}

/** Renamed away first: of several processes that see the same dead lock, the rename lets only one remove it. */
function removeAbandoned(path) {
  const aside = `${path}.${process.pid}.old`;
  try {
    renameSync(path, aside);
  } catch {
    return;
  }
  // Between the look and the rename another process may have taken the lock over: then it is put back.
  if (isAbandoned(aside)) rmSync(aside, { recursive: true, force: true });
  else renameSync(aside, path);
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}
