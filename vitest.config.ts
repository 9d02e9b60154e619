import { defineConfig } from 'vitest/config';

const MINUTE = 60_000;

export default defineConfig({
  test: {
    projects: [
      { test: { name: 'unit', include: ['src/**/*.test.{ts,tsx}', 'test/*.test.ts'] } },
      { test: { name: 'property', include: ['test/property/**/*.test.ts'], testTimeout: MINUTE } },
      { test: { name: 'store', include: ['test/store/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE } },
      { test: { name: 'cli', include: ['test/cli/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE } },
      { test: { name: 'http', include: ['test/http/**/*.test.ts'], testTimeout: MINUTE, hookTimeout: MINUTE } },
      {
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          testTimeout: 2 * MINUTE,
          hookTimeout: MINUTE,
          fileParallelism: false,
        },
      },
      { test: { name: 'slow', include: ['test/slow/**/*.test.ts'], testTimeout: 5 * MINUTE, hookTimeout: MINUTE, fileParallelism: false } },
    ],
  },
});
