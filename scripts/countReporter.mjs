import { writeFileSync } from 'node:fs';

/**
 * Vitest reporter: writes, by project, how many tests passed, failed and were skipped, with the reason given for each skip, and the
 * seconds that its files took. What failed outside every test is counted under no project.
 */
export class CountReporter {
  onTestRunEnd(testModules, unhandledErrors) {
    const projects = {};
    for (const testModule of testModules) {
      const name = testModule.project.name;
      projects[name] ??= { passed: 0, failed: 0, skips: [], seconds: 0 };
      count(testModule, projects[name]);
    }
    writeFileSync(process.env.EBBLINE_COUNTS_FILE, JSON.stringify({ projects, unhandled: unhandledErrors.length }));
  }
}

function count(testModule, counts) {
  let failedInModule = 0;
  for (const test of testModule.children.allTests()) {
    const { state, note } = test.result();
    if (state === 'passed') counts.passed += 1;
    else if (state === 'failed') failedInModule += 1;
    else counts.skips.push({ test: `${testModule.relativeModuleId}: ${test.fullName}`, reason: note });
  }
  // A module that fails before or around its tests (an import, a hook) is one failure.
  counts.failed += failedInModule === 0 && testModule.state() === 'failed' ? 1 : failedInModule;
  const { collectDuration, duration, setupDuration } = testModule.diagnostic();
  counts.seconds += (collectDuration + duration + setupDuration) / 1000;
}

// biome-ignore lint/style/noDefaultExport: vitest loads a reporter by its file's default export
export default CountReporter;
