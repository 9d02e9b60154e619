import { randomBytes } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { RecoveryKeyMistypedError, StoreDamagedError, StoreError, StoreNewerError, WrongPassphraseError } from '../../src/store/errors.ts';
import { changePassphrase, createKeys, openKeys } from '../../src/store/keyEnvelope.ts';
import { formatRecoveryKey } from '../../src/store/recoveryKey.ts';
import { fingerprint, PASSPHRASE, temporaryFolders } from './folder.ts';

const folders = temporaryFolders();
afterEach(() => folders.clear());

describe('the key file', () => {
  test('opens with the passphrase and with the recovery key, and holds neither them nor the key', async () => {
    const folder = folders.make();
    const { key, recoveryKey } = await createKeys(folder, PASSPHRASE, randomBytes);
    expect(key).toHaveLength(32);
    expect(await openKeys(folder, { passphrase: PASSPHRASE })).toEqual(key);
    // The same letters composed in another way, as another keyboard types them.
    expect(await openKeys(folder, { passphrase: PASSPHRASE.normalize('NFD') })).toEqual(key);
    expect(await openKeys(folder, { recoveryKey: recoveryKey.toLowerCase() })).toEqual(key);
    const text = readFileSync(join(folder, 'keys.json'), 'utf8');
    for (const secret of [PASSPHRASE, recoveryKey, key.toString('hex'), key.toString('base64')]) expect(text).not.toContain(secret);
  });

  test('a new passphrase wraps the same key: the old one no longer opens it, the recovery key does', async () => {
    const folder = folders.make();
    const { key, recoveryKey } = await createKeys(folder, PASSPHRASE, randomBytes);
    await changePassphrase(folder, { passphrase: PASSPHRASE }, 'a new one', randomBytes);
    expect(await openKeys(folder, { passphrase: 'a new one' })).toEqual(key);
    expect(await openKeys(folder, { recoveryKey })).toEqual(key);
    await expect(openKeys(folder, { passphrase: PASSPHRASE })).rejects.toThrow(WrongPassphraseError);
    await changePassphrase(folder, { recoveryKey }, 'a third one', randomBytes);
    expect(await openKeys(folder, { passphrase: 'a third one' })).toEqual(key);
  });

  test('each way to fail has its own error, and none changes a byte', async () => {
    const folder = folders.make();
    const file = join(folder, 'keys.json');
    const { recoveryKey } = await createKeys(folder, PASSPHRASE, randomBytes);
    const good = readFileSync(file, 'utf8');
    const fails = async (text: string, secret: Parameters<typeof openKeys>[1], expected: new (...parts: never[]) => StoreError) => {
      writeFileSync(file, text);
      const before = fingerprint(folder);
      await expect(openKeys(folder, secret)).rejects.toThrow(expected);
      await expect(changePassphrase(folder, secret, 'new', randomBytes)).rejects.toThrow(expected);
      expect(fingerprint(folder)).toEqual(before);
    };
    await fails(good, { passphrase: `${PASSPHRASE} ` }, WrongPassphraseError);
    await fails(good, { passphrase: '' }, WrongPassphraseError);
    await fails(good, { recoveryKey: formatRecoveryKey(randomBytes(20)) }, WrongPassphraseError);
    await fails(good, { recoveryKey: recoveryKey.slice(0, -1) }, RecoveryKeyMistypedError);
    await fails('', { passphrase: PASSPHRASE }, StoreDamagedError);
    await fails('null', { passphrase: PASSPHRASE }, StoreDamagedError);
    await fails(good.slice(0, -30), { passphrase: PASSPHRASE }, StoreDamagedError);
    // One letter of each value in turn: never taken for a wrong passphrase.
    for (const match of good.matchAll(/": "?([A-Za-z0-9+/=]{4})/g)) {
      const at = (match.index ?? 0) + match[0].length - 1;
      await fails(
        `${good.slice(0, at)}${good[at] === '7' ? '8' : '7'}${good.slice(at + 1)}`,
        { passphrase: PASSPHRASE },
        StoreDamagedError,
      );
    }
    rmSync(file);
    await expect(openKeys(folder, { passphrase: PASSPHRASE })).rejects.toThrow(/key file is missing/);
  });

  test('a key file of a newer program says so', async () => {
    const folder = folders.make();
    await createKeys(folder, PASSPHRASE, randomBytes);
    const file = join(folder, 'keys.json');
    const { checksum: _checksum, ...content } = JSON.parse(readFileSync(file, 'utf8'));
    const newer = { ...content, version: 2 };
    const { canonicalJson } = await import('../../src/store/chain.ts');
    const { createHash } = await import('node:crypto');
    writeFileSync(file, JSON.stringify({ ...newer, checksum: createHash('sha256').update(canonicalJson(newer)).digest('hex') }));
    const before = fingerprint(folder);
    await expect(openKeys(folder, { passphrase: PASSPHRASE })).rejects.toThrow(StoreNewerError);
    expect(fingerprint(folder)).toEqual(before);
  });

  test('is never written over by a second set-up, nor made from an empty passphrase', async () => {
    const folder = folders.make();
    await expect(createKeys(folder, '  ', randomBytes)).rejects.toThrow(RangeError);
    await createKeys(folder, PASSPHRASE, randomBytes);
    const before = fingerprint(folder);
    await expect(createKeys(folder, 'other', randomBytes)).rejects.toThrow(StoreError);
    await expect(changePassphrase(folder, { passphrase: PASSPHRASE }, '', randomBytes)).rejects.toThrow(RangeError);
    expect(fingerprint(folder)).toEqual(before);
  });
});
