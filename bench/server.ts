// Start time and idle memory of the built server against a bare Fastify, and the first page's script against a bare React page.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'vite';
import { digits, median, ratioOf } from './measure.ts';

const STARTS = 7;
const IDLE_MS = 3000;
const BUDGET = { startMs: 1500, memoryMB: 150, scriptKB: 350 };
const MB = 1e6;
const KB = 1e3;
const ROOT = fileURLToPath(new URL('..', import.meta.url));

interface Start {
  readonly readyMs: number;
  readonly memoryMB: number;
  readonly scriptKB: number;
}

const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
try {
  const ours = ['dist/server.js', '--port', '0', '--data', join(folder, 'demo')];
  const peer = ['bench/helloServer.mjs'];
  if (!existsSync(join(ROOT, 'dist/server.js'))) throw new Error('dist/server.js is not built: npm run build');
  // The first start makes the demonstration and is not measured.
  await start(ours);
  const own: Start[] = [];
  const bare: Start[] = [];
  for (let time = 0; time < STARTS; time += 1) {
    if (time % 2 === 0) own.push(await start(ours));
    bare.push(await start(peer));
    if (time % 2 === 1) own.push(await start(ours));
  }
  report('start to first page, existing demo data, ms', own, bare, 'readyMs', BUDGET.startMs);
  report(`resident memory after ${IDLE_MS / 1000} s idle, MB`, own, bare, 'memoryMB', BUDGET.memoryMB);
  const script = own[0]?.scriptKB ?? Number.NaN;
  const reactKB = await barePageKB();
  console.log(`script of the first page, kB gzip: Ebbline ${digits(script)}, React alone ${digits(reactKB)}`);
  console.log(`  Ebbline / peer ${digits(script / reactKB)}; budget ${BUDGET.scriptKB}`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

function report(what: string, own: readonly Start[], bare: readonly Start[], key: 'readyMs' | 'memoryMB', budget: number): void {
  const [ours, peers] = [own.map((s) => s[key]), bare.map((s) => s[key])];
  console.log(`${what}: Ebbline ${digits(median(ours))} (largest ${digits(Math.max(...ours))}), bare Fastify ${digits(median(peers))}`);
  console.log(`  Ebbline / peer ${ratioOf(ours, peers)}; budget ${budget}`);
}

/** From starting the process to the whole first page; then idle; then stopped. */
async function start(args: readonly string[]): Promise<Start> {
  const began = performance.now();
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] });
  const exited = once(child, 'exit');
  try {
    const url = await addressOf(child);
    const page = await textAt(url);
    const readyMs = performance.now() - began;
    const scripts = [...page.matchAll(/<(?:script[^>]*src|link rel="modulepreload"[^>]*href)="([^"]+)"/g)];
    const texts = await Promise.all(scripts.map(([, path = '']) => textAt(new URL(path, url).href)));
    await new Promise((resolve) => setTimeout(resolve, IDLE_MS));
    const scriptKB = texts.reduce((sum, text) => sum + gzipSync(text).length, 0) / KB;
    return { readyMs, memoryMB: residentMB(child.pid), scriptKB };
  } finally {
    child.kill('SIGINT');
    await exited;
  }
}

async function addressOf(child: ChildProcess): Promise<string> {
  if (!child.stdout) throw new Error('the server has no output');
  for await (const line of createInterface({ input: child.stdout })) {
    const [origin] = /http:\/\/localhost:\d+/.exec(line) ?? [];
    if (origin) return `${origin}/`;
  }
  throw new Error('the server ended without printing an address');
}

async function textAt(url: string): Promise<string> {
  const answer = await fetch(url, { headers: { accept: '*/*' } });
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}`);
  return answer.text();
}

/** What Linux says of the process; NaN elsewhere, which prints as such. */
function residentMB(pid: number | undefined): number {
  const file = `/proc/${pid}/status`;
  if (!existsSync(file)) return Number.NaN;
  const [, kib] = /^VmRSS:\s+(\d+) kB$/m.exec(readFileSync(file, 'utf8')) ?? [];
  return (Number(kib) * 1024) / MB;
}

/** The smallest page with the same library, built by the same builder. */
async function barePageKB(): Promise<number> {
  const input = join(ROOT, 'bench/helloPage.ts');
  const built = await build({ root: ROOT, configFile: false, logLevel: 'silent', build: { write: false, rolldownOptions: { input } } });
  if (!('output' in built)) throw new Error('the page of the peer was not built');
  return built.output.reduce((sum, part) => sum + (part.type === 'chunk' ? gzipSync(part.code).length : 0), 0) / KB;
}
