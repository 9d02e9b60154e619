import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { RandomBytes } from './chain.ts';
import { KEYS_FILE } from './files.ts';
import { createKeys, openKeys, type Secret } from './keyEnvelope.ts';
import { openSqliteStore, type Store } from './openStore.ts';

/** A new data folder. The recovery key is for printing and is not kept anywhere. */
export async function setUpSqliteStore(options: {
  readonly folder: string;
  readonly passphrase: string;
  readonly random: RandomBytes;
}): Promise<{ store: Store; key: Buffer; recoveryKey: string }> {
  const { folder, passphrase, random } = options;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const { key, recoveryKey } = await createKeys(folder, passphrase, random);
  try {
    return { store: await openSqliteStore({ folder, key, create: true }), key, recoveryKey };
  } catch (error) {
    // Keys without data would be in the way of the next try.
    rmSync(join(folder, KEYS_FILE), { force: true });
    throw error;
  }
}

/** The store of an existing data folder. @throws the errors of `openKeys` and `openSqliteStore` */
export async function unlockSqliteStore(folder: string, secret: Secret): Promise<{ store: Store; key: Buffer }> {
  const key = await openKeys(folder, secret);
  return { store: await openSqliteStore({ folder, key }), key };
}
