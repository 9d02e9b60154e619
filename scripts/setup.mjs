#!/usr/bin/env node
// Brings everything the project needs, with Node's own modules only. Does nothing when nothing changed; needs no network then.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { withLock } from './lock.mjs';
import { findChromium, findPostgres } from './tools.mjs';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const STAMP = join(ROOT, 'node_modules', '.ebbline-setup');
const DATABASE = 'better-sqlite3-multiple-ciphers';

/** Messages and the output of everything started here go to stderr: stdout belongs to the command that needed the set-up. */
const say = (text) => console.error(text);

/**
 * Packages at the versions of package-lock.json, and the database engine built for the running Node. `onInstalled` is called once the
 * packages are there: compiling the engine keeps one core busy for a minute or two, and much needs no database.
 */
export async function setUpPackages({ onInstalled = () => {} } = {}) {
  if (isStamped()) return onInstalled();
  await withLock(join(ROOT, '.ebbline-setup.lock'), 'set-up', async () => {
    if (isStamped()) return onInstalled();
    if (!hasLockedPackages()) {
      say('Setting up: installing packages ...');
      await npm('ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund');
    }
    onInstalled();
    if (!(await databaseOpens())) {
      say('Setting up: the database engine (about a minute where it must be compiled) ...');
      await npm('rebuild', DATABASE);
      if (!(await databaseOpens())) throw new Error(`${DATABASE} does not load. Compiling it needs python3, make and g++.`);
    }
    writeFileSync(STAMP, stamp());
    say('Setting up: done.');
  });
}

/** The browser and the database server that the tests use. Where they cannot be had, the tests that need them are skipped and say so. */
export async function setUpTestTools() {
  const missing = missingTools();
  if (missing.length === 0) return;
  if (process.platform === 'linux' && process.getuid() === 0 && existsSync('/usr/bin/apt-get')) {
    await withLock(join(ROOT, '.ebbline-tools.lock'), 'set-up of test tools', () => installWithApt(missingTools()));
  }
  for (const tool of missingTools()) {
    say(`SKIPPED: ${tool.tests}, because ${tool.name} is not installed. To run them, install ${tool.name} (${tool.hint}).`);
  }
}

function missingTools() {
  const tools = [];
  if (!findChromium()) {
    tools.push({
      name: 'Chromium',
      tests: 'browser tests',
      aptPackage: 'chromium',
      hint: 'or set CHROMIUM_PATH to a Chromium or Chrome program',
    });
  }
  if (!findPostgres()) {
    tools.push({
      name: 'PostgreSQL',
      tests: 'store tests on PostgreSQL',
      aptPackage: 'postgresql',
      hint: 'or set EBBLINE_POSTGRES_BIN to the folder that holds initdb and postgres',
    });
  }
  return tools;
}

async function installWithApt(tools) {
  if (tools.length === 0) return;
  say(`Setting up for tests: installing ${tools.map((tool) => tool.name).join(' and ')} from the system's packages ...`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const apt = (...args) => run('apt-get', ['-q', '-o', 'DPkg::Lock::Timeout=300', ...args], { env, quiet: true });
  try {
    await apt('update');
    await apt('install', '-y', '--no-install-recommends', ...tools.map((tool) => tool.aptPackage));
  } catch (error) {
    say(`The system's packages could not be installed: ${error.message}`);
  }
}

function stamp() {
  const lockDigest = createHash('sha256')
    .update(readFileSync(join(ROOT, 'package-lock.json')))
    .digest('hex');
  return `${lockDigest} ${process.platform}-${process.arch} ABI ${process.versions.modules}\n`;
}

function isStamped() {
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === stamp();
}

/** True after a developer's own `npm install`: npm then left a record of the installed tree that agrees with the lock file. */
function hasLockedPackages() {
  const record = join(ROOT, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  const locked = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')).packages;
  const paths = Object.keys(locked).filter((path) => path !== '');
  return (
    Object.keys(installed).every((path) => path in locked) &&
    paths.every((path) => (installed[path] ? installed[path].version === locked[path].version : locked[path].optional === true))
  );
}

async function databaseOpens() {
  const script = `const Database = require('${DATABASE}'); new Database(':memory:').close();`;
  return run(process.execPath, ['-e', script], { quiet: true }).then(
    () => true,
    () => false,
  );
}

/** npm, with node-gyp pointed at the running Node's own headers when they are there, so that compiling needs no network. */
async function npm(...args) {
  const env = { ...process.env };
  const prefix = dirname(dirname(process.execPath));
  if (existsSync(join(prefix, 'include', 'node', 'node.h'))) env.npm_package_config_node_gyp_nodedir = prefix;
  const cli = process.env.npm_execpath;
  if (cli?.endsWith('.js')) await run(process.execPath, [cli, ...args], { env });
  else await run(process.platform === 'win32' ? 'npm.cmd' : 'npm', args, { env, shell: process.platform === 'win32' });
}

function run(command, args, { env = process.env, shell = false, quiet = false } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { cwd: ROOT, env, shell, stdio: quiet ? ['ignore', 'pipe', 'pipe'] : ['ignore', 2, 2] });
    let tail = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on('data', (data) => {
        tail = (tail + data).slice(-2000);
      });
    }
    child.on('error', reject);
    child.on('close', (code, signal) => {
      if (code === 0) resolve();
      else reject(new Error(`${command} ${args.slice(0, 2).join(' ')} ended with ${signal ?? code}\n${tail}`));
    });
  });
}

/** `installed`: the packages are there. `ready`: so are the database engine and what else the tests need. Both fail when the set-up does. */
export function setUpForTests() {
  requireNode();
  let ready;
  const installed = new Promise((resolve, reject) => {
    ready = Promise.all([setUpPackages({ onInstalled: resolve }), setUpTestTools()]);
    ready.catch(reject);
  });
  return { installed, ready };
}

function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) throw new Error(`Node 20.19 or newer is needed; this is ${process.version}.`);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  try {
    requireNode();
    await setUpPackages();
  } catch (error) {
    say(`Set-up failed: ${error.message}`);
    process.exitCode = 1;
  }
}
