#!/usr/bin/env node
// Every test. Ends with one line that sums the suites: `Tests: N passed, M failed, K skipped`.
import { buildIfChanged } from './build.mjs';
import { runStaticChecks, runUnitTests } from './check.mjs';
import { setUpForTests } from './setup.mjs';
import { runSuite, runSuites } from './suite.mjs';

const ZONES = ['America/St_Johns', 'Pacific/Auckland'];
const WHOLE_REPEAT_LIMIT_S = 30;
/** All in one run, the long ones beside the short. */
const AT_ONCE = ['property', 'store', 'cli', 'http', 'browser', 'slow'];

const failedChecks = [];
const suites = [];
const repeats = [];

const setUp = setUpForTests();
await setUp.installed;
if (process.argv.includes('--long')) {
  await setUp.ready;
  await build();
  // The same tests with more of everything: 200,000 people, 200 kills, every state of a screen in the dark too.
  for (const project of ['property', 'slow', 'browser']) suites.push(await runSuite(project, { env: { EBBLINE_LONG: '1' } }));
} else {
  // What needs no database goes first, the unit tests too: where the engine must be compiled, that goes on beside it.
  failedChecks.push(...(await runStaticChecks()));
  await build();
  const unit = await runUnitTests();
  suites.push(unit);
  repeats.push(...(await Promise.all(ZONES.map((zone) => repeatInZone(zone, unit)))));
  await setUp.ready;
  suites.push(...(await runSuites(AT_ONCE)));
}
report();

async function build() {
  console.log('\n== build');
  try {
    await buildIfChanged();
    console.log('ok');
  } catch (error) {
    console.error(error);
    failedChecks.push('build');
  }
}

/** All unit tests again in another time zone, or those named `*.date.test.ts` once the whole takes long on one core. */
function repeatInZone(zone, unit) {
  const filters = unit.seconds < WHOLE_REPEAT_LIMIT_S ? [] : ['.date.test.'];
  return runSuite('unit', { name: `unit again, time zone ${zone}`, env: { TZ: zone }, filters });
}

function report() {
  console.log('\n== summary');
  for (const suite of suites) console.log(line(suite));
  for (const suite of repeats) console.log(`${line(suite)} (the same tests again: only failures count below)`);
  const skips = suites.flatMap((suite) => suite.skips);
  for (const skip of skips) console.log(`skipped: ${skip.test}: ${skip.reason ?? 'no reason given'}`);
  if (failedChecks.length > 0) console.log(`FAILED: ${failedChecks.join(', ')}`);

  const sum = (list, count) => list.reduce((total, suite) => total + count(suite), 0);
  const failed = sum([...suites, ...repeats], (suite) => suite.failed);
  process.exitCode = failed + failedChecks.length === 0 ? 0 : 1;
  console.log(`\nTests: ${sum(suites, (suite) => suite.passed)} passed, ${failed} failed, ${skips.length} skipped`);
}

function line({ name, passed, failed, skips, seconds }) {
  return `${name}: ${passed} passed, ${failed} failed, ${skips.length} skipped, ${seconds.toFixed(1)} s on one core`;
}
