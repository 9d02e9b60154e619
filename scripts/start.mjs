#!/usr/bin/env node
// Builds if needed and runs the server in this same process, so that Ctrl-C reaches it directly. Arguments go to the server.
import { buildIfChanged } from './build.mjs';

await buildIfChanged();
await import(new URL('../dist/server.js', import.meta.url).href);
