import { spawn } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, statfsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

// Broken off, it still clears away its temporary folder.
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(1));

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs one vitest project and answers with its counts.
 * @returns {Promise<{ name: string, passed: number, failed: number, skips: { test: string, reason?: string }[], seconds: number }>}
 */
export async function runSuite(project, { name = project, env = {}, filters = [] } = {}) {
  const [suite] = await runSuites([project], { name, env, filters });
  return { ...suite, name };
}

/** Runs vitest projects at once, so that no core waits for the last file of each, and answers with the counts of each. */
export async function runSuites(projects, { name = projects.join(', '), env = {}, filters = [] } = {}) {
  const folder = mkdtempSync(join(roomInMemory() ?? tmpdir(), 'ebbline-tests-'));
  // PostgreSQL runs as another user, and has a folder of its own in there.
  chmodSync(folder, 0o711);
  const clear = () => clearAway(folder);
  process.once('exit', clear);
  const countsFile = join(folder, 'counts.json');
  console.log(`\n== ${name}`);
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
  const chosen = projects.flatMap((project) => ['--project', project]);
  const reporters = ['--reporter=default', '--reporter=./scripts/countReporter.mjs'];
  const code = await runNode([vitest, 'run', ...chosen, '--silent=passed-only', ...reporters, ...filters], {
    ...process.env,
    ...env,
    TMPDIR: folder,
    EBBLINE_COUNTS_FILE: countsFile,
  });
  const counts = readCounts(countsFile);
  process.off('exit', clear);
  clear();
  // A project without a count did not run: that is a failure, as is a bad end without a failed test, by a crash or a bad configuration.
  const suites = projects.map((project) => ({ name: project, ...(counts.projects[project] ?? { ...NOTHING, failed: 1 }) }));
  const failed = suites.reduce((sum, suite) => sum + suite.failed, 0);
  const others = counts.unhandled > 0 ? counts.unhandled : code !== 0 && failed === 0 ? 1 : 0;
  return suites.map((suite, index) => (index === 0 ? { ...suite, failed: suite.failed + others } : suite));
}

const GIB = 2 ** 30;

/**
 * Where temporary files cost no disk, if there is plenty of room: hundreds of small data folders are made and thrown away, and nothing
 * tested here depends on what a disk keeps.
 */
function roomInMemory() {
  const folder = '/dev/shm';
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize > 4 * GIB && process.availableMemory() > 8 * GIB ? folder : undefined;
  } catch {
    return undefined;
  }
}

/** What cannot be removed, as a disk that a broken test left there, is no reason to lose the counts. */
function clearAway(folder) {
  try {
    rmSync(folder, { recursive: true, force: true });
  } catch (error) {
    console.error(`Left behind: ${folder}: ${error.message}`);
  }
}

const NOTHING = { passed: 0, failed: 0, skips: [], seconds: 0 };

function readCounts(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { projects: {}, unhandled: 0 };
  }
}

/** Exit code of a Node program that shares this terminal. */
export function runNode(args, env = process.env) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'inherit', 'inherit'] });
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}
