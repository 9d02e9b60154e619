#!/usr/bin/env node
// The command line: sets up and builds if needed (messages on stderr only), then runs dist/cli.js in this same process, so that
// standard input, output and the exit code are the command's own.
import { setUpPackages } from './setup.mjs';

await setUpPackages();
const { buildIfChanged } = await import('./build.mjs');
await buildIfChanged();
await import(new URL('../dist/cli.js', import.meta.url).href);
