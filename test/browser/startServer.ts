import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

export interface RunningServer {
  readonly url: string;
  /** The printed address: signs the first member in. In the demonstration it may be used again. */
  readonly signInUrl: string;
  /** To let the server hang, or go on. */
  signal(name: 'SIGSTOP' | 'SIGCONT' | 'SIGKILL'): void;
  /** Ctrl-C. Answers with the exit code. */
  stop(): Promise<{ code: number | null }>;
}

/**
 * Starts the built server, dist/server.js, on a free port and waits for the address it prints. Unless the data folder is named, the
 * server gets one of its own, which goes away with it: a practice in use beside the tests is never touched.
 */
export async function startServer(args: readonly string[] = [], env: Readonly<Record<string, string>> = {}): Promise<RunningServer> {
  const ownFolder = args.includes('--data') ? undefined : mkdtempSync(join(tmpdir(), 'ebbline-server-'));
  const data = ownFolder === undefined ? [] : ['--data', ownFolder];
  const child = spawn(process.execPath, ['dist/server.js', '--port', '0', ...data, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env },
  });
  const exited = once(child, 'exit') as Promise<[number | null]>;
  for await (const line of createInterface({ input: child.stdout })) {
    const [signInUrl, url] = /(http:\/\/localhost:\d+)\S*/.exec(line) ?? [];
    if (!signInUrl || !url) continue;
    const stop = async () => {
      child.kill('SIGINT');
      const [code] = await exited;
      if (ownFolder !== undefined) rmSync(ownFolder, { recursive: true, force: true });
      return { code };
    };
    return { url, signInUrl, stop, signal: (name) => child.kill(name) };
  }
  throw new Error('dist/server.js ended without printing an address. Is it built? (npm run build)');
}
