import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));

/**
 * Runs one vitest project and answers with its counts.
 * @returns {Promise<{ name: string, passed: number, failed: number, skips: { test: string, reason?: string }[], seconds: number }>}
 */
export async function runSuite(project, { name = project, env = {}, filters = [] } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-counts-'));
  const countsFile = join(folder, 'counts.json');
  const began = performance.now();
  console.log(`\n== ${name}`);
  const vitest = join(ROOT, 'node_modules/vitest/vitest.mjs');
  const reporters = ['--reporter=default', '--reporter=./scripts/countReporter.mjs'];
  const code = await runNode([vitest, 'run', '--project', project, '--silent=passed-only', ...reporters, ...filters], {
    ...process.env,
    ...env,
    EBBLINE_COUNTS_FILE: countsFile,
  });
  const counts = readCounts(countsFile);
  // Vitest may end badly without a failed test, by a crash or a bad configuration: that is a failure too.
  const failed = code !== 0 && counts.failed === 0 ? 1 : counts.failed;
  rmSync(folder, { recursive: true, force: true });
  return { name, passed: counts.passed, failed, skips: counts.skips, seconds: (performance.now() - began) / 1000 };
}

function readCounts(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { passed: 0, failed: 0, skips: [] };
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
