import { backupTo } from '../store/backup.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { type DataOptions, unlockFolder } from './openData.ts';
import { reportFailure } from './reportFailure.ts';

/** `backup FOLDER`: a checked copy of the data into a new folder, while the server may be running. */
export function backupCommand(into: string, options: DataOptions & { readonly data?: string | undefined }, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const folder = options.data ?? io.dataFolder;
    const key = await unlockFolder(folder, options, io);
    const { rows } = backupTo({ folder, key, into, madeAt: io.now() });
    io.write(`Backup made in ${into}, opened again and checked: ${sayCounts(rows)}.`);
    return 0;
  });
}

/** The rows that a practice knows by name. */
export function sayCounts(rows: Readonly<Record<string, number>>): string {
  const count = (table: string, one: string, many: string) => `${rows[table] ?? 0} ${rows[table] === 1 ? one : many}`;
  return [count('patient', 'person', 'people'), count('visit', 'visit', 'visits'), count('change', 'logged change', 'logged changes')].join(
    ', ',
  );
}
