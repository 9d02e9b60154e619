import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { CliIo, ExitCode } from './cliIo.ts';

/**
 * `start ...`: the built server stands beside the built command line and reads its own options. It is loaded by its address, since no
 * folder of the sources may import the server.
 */
export async function startCommand(options: readonly string[], io: CliIo): Promise<ExitCode> {
  const server = new URL('./server.js', import.meta.url);
  if (!existsSync(server)) {
    io.warn('The server is not built. Run "npm start" once.');
    return 2;
  }
  process.argv = [process.execPath, fileURLToPath(server), ...options];
  await import(/* @vite-ignore */ server.href);
  return 0;
}
