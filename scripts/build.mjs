#!/usr/bin/env node
// Builds dist/ (web pages, server, command line) when a source changed since the last build, else does nothing.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { withLock } from './lock.mjs';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const DIST = join(ROOT, 'dist');
const STAMP = join(DIST, '.ebbline-build');

export async function buildIfChanged({ force = false } = {}) {
  if (!force && isStamped(sourceDigest())) return;
  await withLock(join(ROOT, '.ebbline-build.lock'), 'build', async () => {
    const digest = sourceDigest();
    if (!force && isStamped(digest)) return;
    console.error('Building ...');
    await buildInto(`${DIST}.next`);
    writeFileSync(join(`${DIST}.next`, '.ebbline-build'), digest);
    // Swapped whole, so that a failed build leaves the last good one in place.
    rmSync(`${DIST}.old`, { recursive: true, force: true });
    if (existsSync(DIST)) renameSync(DIST, `${DIST}.old`);
    renameSync(`${DIST}.next`, DIST);
    rmSync(`${DIST}.old`, { recursive: true, force: true });
  });
}

async function buildInto(folder) {
  rmSync(folder, { recursive: true, force: true });
  process.env.EBBLINE_DIST = folder;
  const { createBuilder } = await import('vite');
  const builder = await createBuilder({ root: ROOT, configFile: join(ROOT, 'vite.config.ts'), logLevel: 'warn' });
  await builder.buildApp();
}

function isStamped(digest) {
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === digest;
}

/** Digest of names and contents of everything that goes into a build; tests do not. */
function sourceDigest() {
  const inSrc = readdirSync(join(ROOT, 'src'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/\.test\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
  const others = ['index.html', 'vite.config.ts', 'package.json', 'package-lock.json'].map((name) => join(ROOT, name));
  const hash = createHash('sha256');
  for (const file of [...inSrc, ...others].sort()) {
    const bytes = readFileSync(file);
    hash.update(`${relative(ROOT, file)}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await buildIfChanged({ force: process.argv.includes('--force') });
}
