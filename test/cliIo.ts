import type { CliIo } from '../src/cli/cliIo.ts';

/** A command's surroundings in memory: what goes in, and what came out. */
export function cliIoOf(
  input: string | readonly string[] = '',
  over: Partial<CliIo> = {},
): CliIo & { readonly out: string[]; readonly err: string[] } {
  const out: string[] = [];
  const err: string[] = [];
  async function* chunks() {
    yield* typeof input === 'string' ? [input] : input;
  }
  return {
    input: chunks(),
    write: (text) => out.push(text),
    writeLines: (lines) => out.push(...lines),
    warn: (line) => err.push(line),
    isTerminal: false,
    dataFolder: 'data/practice',
    serverFile: 'dist/server.js',
    askSecret: () => Promise.resolve(undefined),
    now: () => '2026-11-25T10:36:00.000Z',
    out,
    err,
    ...over,
  };
}
