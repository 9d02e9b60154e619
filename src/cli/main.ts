import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CliIo } from './cliIo.ts';
import { runCli } from './runCli.ts';

// A reader that has seen enough, such as `head`, closes the pipe: that is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

// The built command line stands in dist/, the data beside dist/ unless said otherwise, as for the server.
const here = dirname(fileURLToPath(import.meta.url));

const io: CliIo = {
  input: process.stdin,
  write: (text) => process.stdout.write(`${text}\n`),
  writeLines: (lines) => process.stdout.write(`${lines.join('\n')}\n`),
  warn: (line) => process.stderr.write(`${line}\n`),
  isTerminal: process.stdout.isTTY === true,
  ...(process.stderr.isTTY === true && { progress: process.stderr }),
  dataFolder: join(process.env.EBBLINE_DATA ?? join(here, '..', 'data'), 'practice'),
  serverFile: join(here, 'server.js'),
  askSecret,
  now: () => new Date().toISOString(),
};

/** The exit code is left for the end of the process, so that everything written reaches its reader. */
process.exitCode = await runCli(process.argv.slice(2), io);

async function askSecret(kind: 'passphrase' | 'recovery key'): Promise<string | undefined> {
  const given = kind === 'passphrase' ? process.env.EBBLINE_PASSPHRASE : process.env.EBBLINE_RECOVERY_KEY;
  if (given !== undefined) return given;
  if (process.stdin.isTTY !== true) return undefined;
  const { password } = await import('@inquirer/prompts');
  return password({ message: kind === 'passphrase' ? 'Passphrase' : 'Recovery key', mask: true });
}
