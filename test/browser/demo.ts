import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserTest } from './openBrowser.ts';
import { type RunningServer, startServer } from './startServer.ts';

/** A page on a demonstration of its own, made in a folder that goes away again. One server per file; the page is not signed in yet. */
export const demoTest = browserTest.extend<{ readonly server: RunningServer }>({
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: vitest reads the fixtures a fixture needs from its first argument's pattern
    async ({}, use) => {
      const folder = mkdtempSync(join(tmpdir(), 'ebbline-browser-'));
      const server = await startServer(['--data', folder]);
      await use(server);
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
    { scope: 'file' },
  ],
});
