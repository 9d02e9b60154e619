#!/usr/bin/env node
// The quick check: types (whole project; core without DOM and Node), format and lint, unit and architecture tests.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT, runNode, runSuite } from './suite.mjs';

/** Names of the static checks that failed. */
export async function runStaticChecks() {
  const tsc = join(ROOT, 'node_modules/typescript/bin/tsc');
  const biome = join(ROOT, 'node_modules/@biomejs/biome/bin/biome');
  const checks = [
    { name: 'types', args: [tsc, '-p', 'tsconfig.json'] },
    { name: 'types of core without DOM and Node', args: [tsc, '-p', 'tsconfig.core.json'] },
    { name: 'format and lint', args: [biome, 'check', '--error-on-warnings', '.'] },
  ];
  const failed = [];
  for (const { name, args } of checks) {
    console.log(`\n== ${name}`);
    if ((await runNode(args)) === 0) console.log('ok');
    else failed.push(name);
  }
  return failed;
}

/** The unit project holds the architecture, sources and wording tests of test/ too. */
export function runUnitTests() {
  return runSuite('unit', { env: { TZ: 'UTC' } });
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const failedChecks = await runStaticChecks();
  const unit = await runUnitTests();
  const failed = [...failedChecks, ...(unit.failed > 0 ? ['unit tests'] : [])];
  console.log(failed.length === 0 ? '\nCheck passed.' : `\nCheck FAILED: ${failed.join(', ')}.`);
  process.exitCode = failed.length === 0 ? 0 : 1;
}
