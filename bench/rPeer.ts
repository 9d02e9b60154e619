import { spawnSync } from 'node:child_process';
import { type LinePeer, startPeer } from './linePeer.ts';

/** R as a peer. */
export type RPeer = LinePeer;

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
  return startPeer('Rscript', ['--vanilla', script, ...args]);
}
