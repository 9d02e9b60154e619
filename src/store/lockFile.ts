import { execFileSync } from 'node:child_process';
import { constants, copyFileSync, linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { StoreInUseError } from './errors.ts';
import { LOCK_FILE } from './files.ts';

/** Who holds the data. The start time tells a running server from another program that got the same process number later. */
interface Holder {
  readonly host: string;
  readonly pid: number;
  readonly startedAt: string | null;
}

const TRIES = 5;

/**
 * Takes the lock of a data folder, or a stale one whose process is gone. Returns the function that gives it back.
 * @throws StoreInUseError when a running process of this machine, or any process of another machine, holds it
 */
export function takeLock(folder: string): () => void {
  const file = join(folder, LOCK_FILE);
  const mine: Holder = { host: hostname(), pid: process.pid, startedAt: processStart(process.pid) };
  const text = JSON.stringify(mine);
  const own = `${file}.${process.pid}`;
  writeFileSync(own, text);
  try {
    for (let left = TRIES; left > 0; left -= 1) {
      if (tryLink(own, file)) return () => giveBack(file, text);
      const found = readText(file);
      if (found === undefined) continue;
      const holder = parseHolder(found);
      // A lock that cannot be read was cut off by a crash while it was written by hand; ours are linked in whole.
      if (holder && isRunning(holder)) throw new StoreInUseError(describeHolder(holder), file);
      removeStale(file, found);
    }
  } finally {
    rmSync(own, { force: true });
  }
  throw new StoreInUseError('another process that is starting', file);
}

/** A link appears whole and only where there is none: two processes cannot both succeed. */
function tryLink(own: string, file: string): boolean {
  try {
    linkSync(own, file);
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST')) return false;
    return tryCopy(own, file);
  }
}

/** For disks without links, such as a memory stick. */
function tryCopy(own: string, file: string): boolean {
  try {
    copyFileSync(own, file, constants.COPYFILE_EXCL);
    return true;
  } catch (error) {
    if (hasCode(error, 'EEXIST')) return false;
    throw error;
  }
}

/** Moves the stale lock aside, and back when it turns out that another process has just taken its place. */
function removeStale(file: string, stale: string): void {
  const aside = `${file}.stale.${process.pid}`;
  try {
    renameSync(file, aside);
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return;
    throw error;
  }
  if (readText(aside) !== stale) tryLink(aside, file);
  rmSync(aside, { force: true });
}

function giveBack(file: string, mine: string): void {
  if (readText(file) === mine) rmSync(file, { force: true });
}

function isRunning({ host, pid, startedAt }: Holder): boolean {
  if (host !== hostname()) return true;
  try {
    process.kill(pid, 0);
  } catch (error) {
    // EPERM: it runs, under another user.
    if (!hasCode(error, 'EPERM')) return false;
  }
  return startedAt === processStart(pid);
}

/** Text that changes when the process number is given to another process; null where the system does not say. */
export function processStart(pid: number): string | null {
  try {
    if (process.platform === 'linux') {
      const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
      const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
      // Field 22, counted after the name, which may hold spaces and brackets.
      const ticks = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
      return `${boot} ${ticks}`;
    }
    if (process.platform === 'win32') return null;
    return execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).trim();
  } catch {
    return null;
  }
}

function describeHolder({ host, pid }: Holder): string {
  return host === hostname() ? `process ${pid} on this computer` : `process ${pid} on the computer ${host}`;
}

function parseHolder(text: string): Holder | undefined {
  try {
    const holder: Partial<Holder> | null = JSON.parse(text);
    const isHolder = typeof holder?.pid === 'number' && typeof holder.host === 'string';
    return isHolder ? (holder as Holder) : undefined;
  } catch {
    return undefined;
  }
}

function readText(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (hasCode(error, 'ENOENT')) return undefined;
    throw error;
  }
}

function hasCode(error: unknown, code: string): boolean {
  return error instanceof Error && 'code' in error && error.code === code;
}
