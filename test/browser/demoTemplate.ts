import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { withLock } from '../../scripts/lock.mjs';
import { localDateAt } from '../../src/server/siteClock.ts';
import { type RunningServer, startServer } from './startServer.ts';

const CACHE = fileURLToPath(new URL('../../node_modules/.cache/ebbline-demo', import.meta.url));

/** A server on a copy of the invented practice, which goes away with it. */
export async function startDemo(): Promise<RunningServer> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-demo-'));
  await copyDemo(folder);
  const server = await startServer(['--data', folder]);
  const stop = async () => {
    const ended = await server.stop();
    rmSync(folder, { recursive: true, force: true });
    return ended;
  };
  return { ...server, stop };
}

/**
 * A data folder with the invented practice as the built server makes it on its first start. It is made once for a build and a day, and
 * copied from then on: nobody waits for two years of visits in front of every test.
 */
export async function copyDemo(folder: string): Promise<void> {
  cpSync(await makeTemplate(), folder, { recursive: true });
}

async function makeTemplate(): Promise<string> {
  const build = readFileSync('dist/.ebbline-build', 'utf8').slice(0, 16);
  const template = join(CACHE, `${build}-${localDateAt(new Date().toISOString(), 'Europe/London')}`);
  mkdirSync(CACHE, { recursive: true });
  await withLock(`${template}.lock`, 'making of the invented practice', async () => {
    if (existsSync(template)) return;
    removeOthers(template);
    const making = `${template}.making`;
    const server = await startServer(['--data', making]);
    await server.stop();
    renameSync(making, template);
  });
  return template;
}

/** Of other builds and days, and what a broken run left half made. */
function removeOthers(template: string): void {
  const keep = `${template}.lock`;
  for (const name of readdirSync(dirname(template))) {
    const path = join(CACHE, name);
    if (path !== keep) rmSync(path, { recursive: true, force: true });
  }
}
