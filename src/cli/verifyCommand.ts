import { openSqliteStore } from '../store/openStore.ts';
import { verify } from '../store/verify.ts';
import type { CliIo, ExitCode } from './cliIo.ts';
import { type DataOptions, unlockFolder } from './openData.ts';
import { reportFailure } from './reportFailure.ts';

/** `verify [FOLDER]`: recomputes the chain of changes and the digest of every current row; writes nothing. A backup can be verified too. */
export function verifyCommand(given: string | undefined, options: DataOptions, io: CliIo): Promise<ExitCode> {
  return reportFailure(io, async () => {
    const folder = given ?? io.dataFolder;
    const key = await unlockFolder(folder, options, io);
    const store = await openSqliteStore({ folder, key, readOnly: true });
    try {
      const { ok, checked, problems } = await verify(store.db);
      const looked = `${checked.changes} logged changes and ${checked.rows} rows checked in ${folder}`;
      if (ok) {
        io.write(`${looked}: all as they were written.`);
        return 0;
      }
      for (const { table, id, says } of problems) io.write(`${table} ${id}: ${says}`);
      io.warn(`${looked}: ${problems.length} ${problems.length === 1 ? 'is' : 'are'} not as written.`);
      return 1;
    } finally {
      await store.close();
    }
  });
}
