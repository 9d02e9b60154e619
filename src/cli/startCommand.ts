import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import type { CliIo, ExitCode } from './cliIo.ts';

/** `start ...`: hands over to the built server, which reads its own options. Loaded by its address, since no folder of `src` may import the server. */
export async function startCommand(options: readonly string[], { serverFile, warn }: CliIo): Promise<ExitCode> {
  if (!existsSync(serverFile)) {
    warn('The server is not built. Run "npm start" once.');
    return 2;
  }
  process.argv = [process.execPath, serverFile, ...options];
  await import(/* @vite-ignore */ pathToFileURL(serverFile).href);
  return 0;
}
