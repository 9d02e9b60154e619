import { writeFileSync } from 'node:fs';

/** Vitest reporter: writes how many tests passed, failed and were skipped, with the reason given for each skip. */
export class CountReporter {
  onTestRunEnd(testModules, unhandledErrors) {
    const counts = { passed: 0, failed: unhandledErrors.length, skips: [] };
    for (const testModule of testModules) {
      let failedInModule = 0;
      for (const test of testModule.children.allTests()) {
        const { state, note } = test.result();
        if (state === 'passed') counts.passed += 1;
        else if (state === 'failed') failedInModule += 1;
        else counts.skips.push({ test: `${testModule.relativeModuleId}: ${test.fullName}`, reason: note });
      }
      // A module that fails before or around its tests (an import, a hook) is one failure.
      counts.failed += failedInModule === 0 && testModule.state() === 'failed' ? 1 : failedInModule;
    }
    writeFileSync(process.env.EBBLINE_COUNTS_FILE, JSON.stringify(counts));
  }
}

// biome-ignore lint/style/noDefaultExport: vitest loads a reporter by its file's default export
export default CountReporter;
