import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chownSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

/** A PostgreSQL of its own in a temporary folder, on a socket in that folder: no port, no password, gone at the end. */
export interface PostgresServer {
  connectionString(database: string, user?: string): string;
  stop(): Promise<void>;
}

const OLDEST = 15;
const START_MS = 30_000;

/** The folder of `initdb` and `postgres`, 15 or newer, or undefined. */
export function findPostgres(): string | undefined {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian)
    ? readdirSync(debian)
        .map(Number)
        .filter((version) => version >= OLDEST)
        .sort((a, b) => b - a)
    : [];
  const folders = [...versions.map((version) => join(debian, String(version), 'bin')), ...(process.env.PATH ?? '').split(delimiter)];
  return folders.find((folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres')));
}

/** PostgreSQL refuses to run as root, so root lends it the user that its package made, or nobody's. */
function unprivilegedUser(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined;
  const id = (flag: string) => {
    for (const user of ['postgres', 'nobody']) {
      try {
        return Number(execFileSync('id', [flag, user], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }));
      } catch {
        // No such user: the next one.
      }
    }
    throw new Error('there is no user that may run PostgreSQL');
  };
  return { uid: id('-u'), gid: id('-g') };
}

/** `durable`: what it acknowledges is on the disk, as a benchmark needs. */
export async function startPostgres(binaries: string, { durable = false } = {}): Promise<PostgresServer> {
  const root = mkdtempSync(join(tmpdir(), 'ebbline-pg-'));
  const user = unprivilegedUser();
  const data = join(root, 'data');
  mkdirSync(data, { mode: 0o700 });
  if (user) for (const folder of [root, data]) chownSync(folder, user.uid, user.gid);
  const as = { ...user, cwd: root, env: { PATH: process.env.PATH, LC_ALL: 'C.UTF-8' } };
  execFileSync(join(binaries, 'initdb'), ['-D', data, '-U', 'ebbline', '--auth=trust', '--encoding=UTF8', '--no-sync'], {
    ...as,
    stdio: 'pipe',
  });
  // Nobody's data: what is tested here is not whether PostgreSQL keeps what it acknowledged.
  const quick = durable ? [] : ['-c', 'fsync=off', '-c', 'full_page_writes=off'];
  const settings = ['-c', 'listen_addresses=', '-c', 'max_connections=60', ...quick];
  const server = spawn(join(binaries, 'postgres'), ['-D', data, '-k', root, ...settings], {
    ...as,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  await untilReady(server);
  return {
    connectionString: (database, role = 'ebbline') => `postgresql://${role}@/${database}?host=${encodeURIComponent(root)}`,
    async stop() {
      const ended = new Promise((resolve) => server.once('exit', resolve));
      // Fast shutdown: connections are cut, nothing is waited for.
      server.kill('SIGINT');
      await ended;
      rmSync(root, { recursive: true, force: true });
    },
  };
}

function untilReady(server: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = '';
    const giveUp = setTimeout(() => reject(new Error(`PostgreSQL did not start:\n${said}`)), START_MS);
    server.once('exit', (code) => reject(new Error(`PostgreSQL ended with ${code}:\n${said}`)));
    server.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (!said.includes('ready to accept connections')) return;
      clearTimeout(giveUp);
      resolve();
    });
  });
}
