import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserTest } from './openBrowser.ts';
import { type RunningServer, startServer } from './startServer.ts';

/** Who begins the practice; without a password until one is set. */
export const LEAD = 'Ada Example';

const OPTIONS = {
  'practice-name': 'Practice of the Test',
  'member-name': LEAD,
  'meter-name': 'Meter of the test',
  'meter-lowest': '10',
  'meter-highest': '9000',
  'meter-cutoff': '2500',
  'meter-countdown': '30',
};

/** A practice begun empty, in a folder that goes away again. One server for the file: its tests follow one another. */
export const ownPracticeTest = browserTest.extend<{ readonly server: RunningServer }>({
  server: [
    // biome-ignore lint/correctness/noEmptyPattern: vitest reads the fixtures a fixture needs from its first argument's pattern
    async ({}, use) => {
      const folder = mkdtempSync(join(tmpdir(), 'ebbline-real-'));
      const options = Object.entries(OPTIONS).flatMap(([name, value]) => [`--${name}`, value]);
      const server = await startServer(['--empty', '--data', join(folder, 'data'), ...options], {
        EBBLINE_PASSPHRASE: 'a long enough passphrase',
      });
      await use(server);
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
    { scope: 'file' },
  ],
});
