import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Limits only end what hangs: a machine that is busy with something else may be slow. */
const MINUTE = 60_000;
/** One more than there are cores: tests wait for a page, a save or a clock as often as they compute. */
const maxWorkers = availableParallelism() + 1;
/**
 * A worker keeps what it has loaded for its next file: loading anew for each takes more than the tests themselves. A test that leaves
 * something behind outside its own file, in a module or in the environment, would be seen by the next file of that worker.
 */
const isolate = false;

/** Short files that take long. Where no earlier run tells, vitest begins with the largest files, and these would be left for the end. */
const LONG =
  /slow\/|browser\/(day|shown|swab|checks|record|signing)\.|Screens\.test\.ts$|store\/(postgres|sqlite|makeDemo)\.|openPractice\.|property\/(visit|privacy)\.|leafletPdf\.test\.tsx$|leafletExamples\.|evaluateProtocol\.test\.ts$/;

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => LONG.test(moduleId);
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

export default defineConfig({
  test: {
    maxWorkers,
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: 'unit',
          include: ['src/**/*.test.{ts,tsx}', 'test/*.test.ts', 'test/reference/**/*.test.ts'],
          testTimeout: MINUTE,
          hookTimeout: MINUTE,
          maxWorkers,
          isolate,
        },
      },
      { test: { name: 'property', include: ['test/property/**/*.test.ts'], testTimeout: 3 * MINUTE, maxWorkers, isolate } },
      {
        test: {
          name: 'store',
          include: ['test/store/**/*.test.ts'],
          testTimeout: 2 * MINUTE,
          hookTimeout: 3 * MINUTE,
          maxWorkers,
          isolate,
        },
      },
      { test: { name: 'cli', include: ['test/cli/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers, isolate } },
      {
        test: { name: 'http', include: ['test/http/**/*.test.ts'], testTimeout: 2 * MINUTE, hookTimeout: 3 * MINUTE, maxWorkers, isolate },
      },
      {
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          testTimeout: 4 * MINUTE,
          hookTimeout: 3 * MINUTE,
          // The second that vitest gives is short for a page on a busy machine, which asking twenty times a second keeps busy.
          expect: { poll: { timeout: 30_000, interval: 200 } },
          maxWorkers,
          isolate,
        },
      },
      {
        test: {
          name: 'slow',
          include: ['test/slow/**/*.test.ts'],
          testTimeout: 10 * MINUTE,
          hookTimeout: 3 * MINUTE,
          maxWorkers,
        },
      },
    ],
  },
});
