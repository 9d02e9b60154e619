import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

export interface RunningServer {
  readonly url: string;
  /** The printed address: signs the first member in. In the demonstration it may be used again. */
  readonly signInUrl: string;
  /** Ctrl-C. Answers with the exit code and how long it took. */
  stop(): Promise<{ code: number | null; ms: number }>;
}

/** Starts the built server, dist/server.js, on a free port and waits for the address it prints. */
export async function startServer(args: readonly string[] = []): Promise<RunningServer> {
  const child = spawn(process.execPath, ['dist/server.js', '--port', '0', ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
  const exited = once(child, 'exit') as Promise<[number | null]>;
  for await (const line of createInterface({ input: child.stdout })) {
    const [signInUrl, url] = /(http:\/\/localhost:\d+)\S*/.exec(line) ?? [];
    if (!signInUrl || !url) continue;
    const stop = async () => {
      const began = performance.now();
      child.kill('SIGINT');
      const [code] = await exited;
      return { code, ms: performance.now() - began };
    };
    return { url, signInUrl, stop };
  }
  throw new Error('dist/server.js ended without printing an address. Is it built? (npm run build)');
}
