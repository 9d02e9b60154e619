import { describe, expect, test } from 'vitest';
import { AppError, ERRORS, errorCodeOf } from '../../src/api/errors.ts';
import {
  ConflictError,
  RecoveryKeyMistypedError,
  StoreDamagedError,
  StoreError,
  StoreInUseError,
  StoreNewerError,
  WrongPassphraseError,
} from '../../src/store/errors.ts';

const STORE_ERRORS = [
  new WrongPassphraseError('passphrase'),
  new RecoveryKeyMistypedError(),
  new StoreDamagedError('The file.'),
  new StoreNewerError('This data'),
  new StoreInUseError('process 1', 'lock'),
  new StoreError('STORE_MISSING', 'm'),
  new StoreError('STORE_EXISTS', 'e'),
  new StoreError('STORE_UNSUITABLE', 'u'),
  new ConflictError('The row', 1, 2),
];

describe('errors', () => {
  test('the server knows each error of the store by its code', () => {
    for (const error of STORE_ERRORS) expect(errorCodeOf(error)).toBe(error.code);
    expect(errorCodeOf(new AppError('VISIT_CLOSED', 'closed'))).toBe('VISIT_CLOSED');
  });

  test('a fault of ours or of the system has no code to show', () => {
    expect(errorCodeOf(new Error('x'))).toBeUndefined();
    expect(errorCodeOf(Object.assign(new Error('x'), { code: 'ENOENT' }))).toBeUndefined();
    expect(errorCodeOf(Object.assign(new Error('x'), { code: 'toString' }))).toBeUndefined();
    expect(errorCodeOf({ code: 'CONFLICT' })).toBeUndefined();
  });

  test('the sentences differ, and none blames a wrong passphrase for a damaged file', () => {
    const sentences = STORE_ERRORS.map(({ message }) => message);
    expect(new Set(sentences).size).toBe(sentences.length);
    expect(sentences.filter((sentence) => /passphrase/.test(sentence))).toHaveLength(1);
  });

  test('every code has a status of its kind', () => {
    for (const [code, { status }] of Object.entries(ERRORS)) expect([code, status >= 400 && status < 600]).toEqual([code, true]);
  });
});
