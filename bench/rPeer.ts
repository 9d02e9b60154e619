import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { createInterface } from 'node:readline';

/** R as a peer: one process that stays, told on its standard input what to run. It times itself, so that its start-up never counts. */
export interface RPeer {
  /** `ms` is measured inside R; `values` are the results to compare. */
  run(task: string): Promise<{ readonly ms: number; readonly values: readonly number[] }>;
  close(): void;
}

/** Why R cannot be a peer here, or undefined when it can. */
export function whyNoR(packages: readonly string[]): string | undefined {
  const test = `for (p in commandArgs(TRUE)) if (!requireNamespace(p, quietly = TRUE)) cat(p, "")`;
  const { status, stdout } = spawnSync('Rscript', ['-e', test, ...packages], { encoding: 'utf8' });
  if (status !== 0) return 'R is not installed';
  return stdout.trim() === '' ? undefined : `R has no package ${stdout.trim()}`;
}

/**
 * @param script  an R script that reads task names from standard input, one a line, and answers each with one line: ms, then values
 * @param args    handed to the script
 */
export function startR(script: string, args: readonly string[]): RPeer {
  const child: ChildProcess = spawn('Rscript', ['--vanilla', script, ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
  const { stdin, stdout } = child;
  if (stdin === null || stdout === null) throw new Error('R has no pipes');
  const lines = createInterface({ input: stdout })[Symbol.asyncIterator]();
  return {
    run: async (task) => {
      stdin.write(`${task}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error(`R ended on ${task}`);
      const [ms = Number.NaN, ...values] = String(value).trim().split(' ').map(Number);
      return { ms, values };
    },
    close: () => void stdin.end(),
  };
}
