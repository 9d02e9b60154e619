import { type ChildProcess, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const WORKLOAD = fileURLToPath(new URL('./workload.ts', import.meta.url));

export interface WorkloadOptions {
  readonly folder: string;
  readonly key: Buffer;
  /** "-" for the standard output. */
  readonly ackFile: string;
  readonly answers: number;
  readonly synchronous?: 'FULL' | 'NORMAL';
  readonly env?: Readonly<Record<string, string>>;
}

/** Starts the workload as a process of its own; it ends by killing itself when it has saved its answers. */
export function startWorkload({ folder, key, ackFile, answers, synchronous = 'FULL', env = {} }: WorkloadOptions): ChildProcess {
  const parameters = [folder, key.toString('hex'), ackFile, String(answers), synchronous];
  return spawn(process.execPath, ['--import', 'tsx', WORKLOAD, ...parameters], {
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

/** Resolves when the process is gone. @throws Error with its complaints unless a signal ended it */
export function untilKilled(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let complaints = '';
    child.stderr?.on('data', (chunk: Buffer) => {
      complaints += chunk.toString();
    });
    child.once('error', reject);
    child.once('close', (code, signal) => {
      if (signal === 'SIGKILL') resolve();
      else reject(new Error(`the workload ended with ${signal ?? code}:\n${complaints}`));
    });
  });
}
