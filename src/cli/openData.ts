import { openKeys } from '../store/keyEnvelope.ts';
import type { CliIo } from './cliIo.ts';
import { AnswerError } from './failure.ts';

export interface DataOptions {
  /** Ask for the printed recovery key instead of the passphrase. */
  readonly recoveryKey?: boolean | undefined;
}

/** The key of a data or backup folder. @throws AnswerError when no secret is to be had, and the errors of `openKeys` */
export async function unlockFolder(folder: string, { recoveryKey = false }: DataOptions, { askSecret }: CliIo): Promise<Buffer> {
  const kind = recoveryKey ? 'recovery key' : 'passphrase';
  const secret = await askSecret(kind);
  if (secret === undefined) {
    const variable = recoveryKey ? 'EBBLINE_RECOVERY_KEY' : 'EBBLINE_PASSPHRASE';
    throw new AnswerError(kind, `is needed: set ${variable}, or run this in a terminal`);
  }
  return openKeys(folder, recoveryKey ? { recoveryKey: secret } : { passphrase: secret });
}
