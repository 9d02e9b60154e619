/** Everything a command touches outside itself, so that a test needs no child process. */
export interface CliIo {
  /** Chunks of standard input. */
  readonly input: AsyncIterable<Uint8Array | string>;
  /** One text to standard output, and a line end. */
  readonly write: (text: string) => void;
  /** Many lines to standard output at once: one by one they would take longer than what they say. */
  readonly writeLines: (lines: readonly string[]) => void;
  /** One line to standard error: what a person reads while the output goes to a file. */
  readonly warn: (line: string) => void;
  /** Where a progress bar may be drawn; absent where nobody watches. */
  readonly progress?: NodeJS.WritableStream | undefined;
  /** Standard output is a terminal: `assess` then prints text instead of JSON. */
  readonly isTerminal: boolean;
  /** From the environment, or from a question at the terminal; undefined where neither is to be had. Never from the command line. */
  readonly askSecret: (kind: 'passphrase' | 'recovery key') => Promise<string | undefined>;
  /** Where the practice's data lies when nothing else is said. */
  readonly dataFolder: string;
  /** The built server, which stands beside the built command line. */
  readonly serverFile: string;
  /** The time now, ISO UTC. */
  readonly now: () => string;
}

/** 0 done; 1 done, but something in it was wrong; 2 not done, the input or the command line is wrong. */
export type ExitCode = 0 | 1 | 2;
