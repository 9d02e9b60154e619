import { createHash, randomBytes } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setUpSqliteStore } from '../../src/store/setUpStore.ts';
import { testPractice } from './practice.ts';

export const PASSPHRASE = 'réed warbler 12 boats';

/** A folder that is gone after the test that asked for it. */
export function temporaryFolders(): { make(): string; clear(): void } {
  const folders: string[] = [];
  return {
    make() {
      const folder = mkdtempSync(join(tmpdir(), 'ebbline-folder-'));
      folders.push(folder);
      return folder;
    },
    clear() {
      for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Name and digest of every file, to compare a folder with itself. */
export function fingerprint(folder: string): Record<string, string> {
  const names = readdirSync(folder).sort();
  return Object.fromEntries(
    names.map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex'),
    ]),
  );
}

/** A closed store with one practice and one person. */
export async function filledFolder(folder: string): Promise<{ key: Buffer; recoveryKey: string; patientId: string }> {
  const { store, key, recoveryKey } = await setUpSqliteStore({ folder, passphrase: PASSPHRASE, random: randomBytes });
  const patientId = await (await testPractice(store)).newPatient('Plainly Readable');
  await store.close();
  return { key, recoveryKey, patientId };
}
