import { type ChildProcess, spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

/** A program as a peer: one process that stays, told on its standard input what to run. It times itself: its start-up never counts. */
export interface LinePeer {
  /** `ms` is measured by the peer; `values` are the results to compare. */
  run(task: string): Promise<{ readonly ms: number; readonly values: readonly number[] }>;
  close(): void;
}

/** @param command  reads tasks from standard input, one a line, and answers each with one line: ms, then values */
export function startPeer(command: string, args: readonly string[]): LinePeer {
  const child: ChildProcess = spawn(command, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  const { stdin, stdout } = child;
  if (stdin === null || stdout === null) throw new Error(`${command} has no pipes`);
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]();
  return {
    run: async (task) => {
      stdin.write(`${task}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error(`${command} ended on ${task}`);
      const [ms = Number.NaN, ...values] = String(value).trim().split(' ').map(Number);
      return { ms, values };
    },
    close: () => void stdin.end(),
  };
}
