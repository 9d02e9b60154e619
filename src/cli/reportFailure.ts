import type { CliIo, ExitCode } from './cliIo.ts';
import { errorBodyOf, sayError } from './failure.ts';

/** Runs a command that answers a person; what a user can meet becomes one sentence and exit 2, a fault of ours still throws. */
export async function reportFailure({ warn }: CliIo, work: () => Promise<ExitCode>): Promise<ExitCode> {
  try {
    return await work();
  } catch (error) {
    const body = errorBodyOf(error);
    if (!body) throw error;
    warn(sayError(body));
    return 2;
  }
}
