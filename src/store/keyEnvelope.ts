import { createCipheriv, createDecipheriv, createHash, hkdfSync } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashRaw } from '@node-rs/argon2';
import { canonicalJson, type RandomBytes } from './chain.ts';
import { StoreDamagedError, StoreError, StoreNewerError, WrongPassphraseError } from './errors.ts';
import { KEYS_FILE, writeDurably } from './files.ts';
import { formatRecoveryKey, parseRecoveryKey, RECOVERY_SECRET_BYTES } from './recoveryKey.ts';

/** A passphrase of the practice or the printed recovery key: either opens the data. */
export type Secret = { readonly passphrase: string } | { readonly recoveryKey: string };

interface Wrapped {
  readonly salt: string;
  readonly nonce: string;
  /** The database key under AES-256-GCM, tag last. */
  readonly wrapped: string;
}

interface KeyFile {
  readonly format: 'ebbline-keys';
  readonly version: number;
  readonly passphrase: Wrapped & { readonly kdf: 'argon2id'; readonly memoryKib: number; readonly passes: number; readonly lanes: number };
  readonly recovery: Wrapped & { readonly kdf: 'hkdf-sha256' };
  /** SHA-256 of all of the above, so that a damaged file is not taken for a wrong passphrase. */
  readonly checksum: string;
}

const VERSION = 1;
const KEY_BYTES = 32;
const SALT_BYTES = 16;
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
/** `Algorithm.Argon2id`, whose const enum cannot be imported here. */
const ARGON2ID = 2;
/** About a tenth of a second and 64 MiB for each guess. */
const ARGON2 = { memoryKib: 65_536, passes: 3, lanes: 1 } as const;

/**
 * Makes the key of a new data file and writes it, wrapped twice, to keys.json. The recovery key is shown this once and stored nowhere.
 * @throws StoreError STORE_EXISTS when the folder has a keys.json: writing over it would lose the data for good
 */
export async function createKeys(folder: string, passphrase: string, random: RandomBytes): Promise<{ key: Buffer; recoveryKey: string }> {
  const file = join(folder, KEYS_FILE);
  if (existsSync(file)) throw new StoreError('STORE_EXISTS', `There is a key file already: ${file}. Nothing was changed.`);
  const key = Buffer.from(random(KEY_BYTES));
  const recoverySecret = random(RECOVERY_SECRET_BYTES);
  writeKeyFile(file, {
    passphrase: await wrapWithPassphrase(key, passphrase, random),
    recovery: wrapWithRecovery(key, recoverySecret, random),
  });
  return { key, recoveryKey: formatRecoveryKey(recoverySecret) };
}

/**
 * The database key.
 * @throws WrongPassphraseError, RecoveryKeyMistypedError, StoreDamagedError, StoreNewerError; nothing is written in any case
 */
export async function openKeys(folder: string, secret: Secret): Promise<Buffer> {
  const file = readKeyFile(join(folder, KEYS_FILE));
  if ('recoveryKey' in secret) {
    const wrappingKey = recoveryWrappingKey(parseRecoveryKey(secret.recoveryKey), file.recovery.salt);
    return unwrap(file.recovery, wrappingKey, 'recovery key');
  }
  return unwrap(file.passphrase, await passphraseWrappingKey(secret.passphrase, file.passphrase), 'passphrase');
}

/** Wraps the same key anew: the data file and its backups are not touched, and a backup keeps the passphrase of its day. */
export async function changePassphrase(folder: string, secret: Secret, newPassphrase: string, random: RandomBytes): Promise<void> {
  const key = await openKeys(folder, secret);
  const file = join(folder, KEYS_FILE);
  const { recovery } = readKeyFile(file);
  writeKeyFile(file, { passphrase: await wrapWithPassphrase(key, newPassphrase, random), recovery });
}

async function wrapWithPassphrase(key: Buffer, passphrase: string, random: RandomBytes): Promise<KeyFile['passphrase']> {
  if (passphrase.trim() === '') throw new RangeError('passphrase must not be empty');
  const parameters = { kdf: 'argon2id', ...ARGON2, salt: toBase64(random(SALT_BYTES)) } as const;
  return { ...parameters, ...wrap(key, await passphraseWrappingKey(passphrase, parameters), random) };
}

function wrapWithRecovery(key: Buffer, recoverySecret: Uint8Array, random: RandomBytes): KeyFile['recovery'] {
  const salt = toBase64(random(SALT_BYTES));
  return { kdf: 'hkdf-sha256', salt, ...wrap(key, recoveryWrappingKey(recoverySecret, salt), random) };
}

type PassphraseParameters = Pick<KeyFile['passphrase'], 'memoryKib' | 'passes' | 'lanes' | 'salt'>;

function passphraseWrappingKey(passphrase: string, { memoryKib, passes, lanes, salt }: PassphraseParameters): Promise<Buffer> {
  // One spelling for "é" typed on any keyboard.
  return hashRaw(passphrase.normalize('NFKC'), {
    algorithm: ARGON2ID,
    memoryCost: memoryKib,
    timeCost: passes,
    parallelism: lanes,
    outputLen: KEY_BYTES,
    salt: Buffer.from(salt, 'base64'),
  });
}

/** The recovery secret has 160 random bits, so it needs no slow function. */
function recoveryWrappingKey(recoverySecret: Uint8Array, salt: string): Buffer {
  return Buffer.from(hkdfSync('sha256', recoverySecret, Buffer.from(salt, 'base64'), 'ebbline recovery', KEY_BYTES));
}

function wrap(key: Buffer, wrappingKey: Buffer, random: RandomBytes): Pick<Wrapped, 'nonce' | 'wrapped'> {
  const nonce = Buffer.from(random(NONCE_BYTES));
  const cipher = createCipheriv('aes-256-gcm', wrappingKey, nonce);
  const sealed = Buffer.concat([cipher.update(key), cipher.final(), cipher.getAuthTag()]);
  return { nonce: toBase64(nonce), wrapped: toBase64(sealed) };
}

function unwrap({ nonce, wrapped }: Wrapped, wrappingKey: Buffer, tried: 'passphrase' | 'recovery key'): Buffer {
  const sealed = Buffer.from(wrapped, 'base64');
  const decipher = createDecipheriv('aes-256-gcm', wrappingKey, Buffer.from(nonce, 'base64'), { authTagLength: TAG_BYTES });
  decipher.setAuthTag(sealed.subarray(-TAG_BYTES));
  try {
    return Buffer.concat([decipher.update(sealed.subarray(0, -TAG_BYTES)), decipher.final()]);
  } catch (cause) {
    throw new WrongPassphraseError(tried, { cause });
  }
}

function writeKeyFile(file: string, wraps: Pick<KeyFile, 'passphrase' | 'recovery'>): void {
  const content = { format: 'ebbline-keys', version: VERSION, ...wraps } as const;
  writeDurably(file, `${JSON.stringify({ ...content, checksum: checksumOf(content) } satisfies KeyFile, null, 2)}\n`);
}

/** The checksum is what makes the cast safe: only this file writes a key file with a checksum that fits. */
function readKeyFile(file: string): KeyFile {
  if (!existsSync(file)) throw new StoreDamagedError(`The key file is missing: ${file}.`);
  let content: Partial<KeyFile>;
  try {
    content = JSON.parse(readFileSync(file, 'utf8'));
  } catch (cause) {
    throw new StoreDamagedError(`The key file is damaged: ${file}.`, { cause });
  }
  const { checksum, ...rest } = content ?? {};
  if (rest.format !== 'ebbline-keys' || checksum !== checksumOf(rest)) throw new StoreDamagedError(`The key file is damaged: ${file}.`);
  if (!(typeof rest.version === 'number' && rest.version <= VERSION)) throw new StoreNewerError('The key file');
  return content as KeyFile;
}

function checksumOf(content: Omit<Partial<KeyFile>, 'checksum'>): string {
  return createHash('sha256').update(canonicalJson(content), 'utf8').digest('hex');
}

function toBase64(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString('base64');
}
