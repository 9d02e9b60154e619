import { defineConfig } from 'vitest/config';

const MINUTE = 60_000;
/** Vitest leaves one core idle unless told otherwise: on two cores everything would run one file after another. */
const maxWorkers = '100%';

export default defineConfig({
  test: {
    maxWorkers,
    projects: [
      { test: { name: 'unit', include: ['src/**/*.test.{ts,tsx}', 'test/*.test.ts'], maxWorkers } },
      { test: { name: 'property', include: ['test/property/**/*.test.ts'], testTimeout: MINUTE, maxWorkers } },
      { test: { name: 'store', include: ['test/store/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE, maxWorkers } },
      { test: { name: 'cli', include: ['test/cli/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE, maxWorkers } },
      { test: { name: 'http', include: ['test/http/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE, maxWorkers } },
      { test: { name: 'browser', include: ['test/browser/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 2 * MINUTE, maxWorkers } },
      { test: { name: 'slow', include: ['test/slow/**/*.test.ts'], testTimeout: 5 * MINUTE, hookTimeout: MINUTE, fileParallelism: false } },
    ],
  },
});
