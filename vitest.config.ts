import { defineConfig } from 'vitest/config';

/** Limits only end what hangs: a machine that is busy with something else may be slow. */
const MINUTE = 60_000;
/** Vitest leaves one core idle unless told otherwise: on two cores everything would run one file after another. */
const maxWorkers = '100%';

export default defineConfig({
  test: {
    maxWorkers,
    projects: [
      { test: { name: 'unit', include: ['src/**/*.test.{ts,tsx}', 'test/*.test.ts'], testTimeout: MINUTE, maxWorkers } },
      { test: { name: 'property', include: ['test/property/**/*.test.ts'], testTimeout: 3 * MINUTE, maxWorkers } },
      { test: { name: 'store', include: ['test/store/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers } },
      { test: { name: 'cli', include: ['test/cli/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers } },
      { test: { name: 'http', include: ['test/http/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers } },
      { test: { name: 'browser', include: ['test/browser/**/*.test.ts'], testTimeout: 4 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers } },
      {
        test: {
          name: 'slow',
          include: ['test/slow/**/*.test.ts'],
          testTimeout: 10 * MINUTE,
          hookTimeout: 3 * MINUTE,
          fileParallelism: false,
        },
      },
    ],
  },
});
