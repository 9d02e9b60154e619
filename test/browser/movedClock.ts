import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onTestFinished } from 'vitest';
import { copyDemo } from './demoTemplate.ts';
import { startServer } from './startServer.ts';

/** The invented practice on a server whose clock a test can move. */
export async function startWithMovedClock(movedMs = 0) {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-clock-'));
  const data = join(folder, 'data');
  await copyDemo(data);
  const file = join(folder, 'moved');
  const move = (ms: number) => writeFileSync(file, String(ms));
  move(movedMs);
  const server = await startServer(['--data', data], {
    NODE_OPTIONS: `--import=${pathToFileURL(join(import.meta.dirname, 'movedClock.mjs')).href}`,
    EBBLINE_TEST_CLOCK: file,
  });
  onTestFinished(async () => {
    server.signal('SIGCONT');
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  });
  return { ...server, move };
}
