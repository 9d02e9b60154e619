import { restoreFrom } from '../store/backup.ts';
import { sayCounts } from './backupCommand.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { type DataOptions, unlockFolder } from './openData.ts';
import { reportFailure } from './reportFailure.ts';

/** `restore BACKUP FOLDER`: puts a backup into an empty folder, with the passphrase of the day it was made. */
export function restoreCommand(backup: string, folder: string, options: DataOptions, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const key = await unlockFolder(backup, options, io);
    const { madeAt, rows } = restoreFrom({ backup, key, folder });
    io.write(`Restored into ${folder} as it was at ${madeAt}, and checked: ${sayCounts(rows)}.`);
    return 0;
  });
}
