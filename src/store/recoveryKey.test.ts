import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RecoveryKeyMistypedError } from './errors.ts';
import { formatRecoveryKey, parseRecoveryKey, RECOVERY_SECRET_BYTES } from './recoveryKey.ts';

const secrets = fc.oneof(
  fc.constantFrom(new Uint8Array(RECOVERY_SECRET_BYTES), new Uint8Array(RECOVERY_SECRET_BYTES).fill(255)),
  fc.uint8Array({ minLength: RECOVERY_SECRET_BYTES, maxLength: RECOVERY_SECRET_BYTES }),
);

// RFC 4648 base32 of the bytes 00 44 32 14 C7 42 54 B6 35 CF counts 0..15 in five-bit groups; the alphabet here writes 0..9, A..F.
// The zero bytes after it are zeros.
test('letters are five bits each, most significant first', () => {
  const secret = new Uint8Array(RECOVERY_SECRET_BYTES);
  secret.set([0x00, 0x44, 0x32, 0x14, 0xc7, 0x42, 0x54, 0xb6, 0x35, 0xcf]);
  expect(formatRecoveryKey(secret)).toMatch(/^0123-4567-89AB-CDEF-0000-0000-0000-0000-[0-9A-Z]{4}$/);
});

test('typed as printed, in small letters, with spaces, with O for 0 and l for 1, it gives the secret back', () => {
  fc.assert(
    fc.property(secrets, (secret) => {
      const printed = formatRecoveryKey(secret);
      expect(printed).toMatch(/^([0-9A-HJKMNP-TV-Z]{4}-){8}[0-9A-HJKMNP-TV-Z]{4}$/);
      const typed = printed.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o').replaceAll('1', 'l');
      for (const text of [printed, typed, ` ${printed.replaceAll('-', '')}\n`]) expect([...parseRecoveryKey(text)]).toEqual([...secret]);
    }),
  );
});

test('one wrong letter, two letters swapped, a letter too few or too many is a typing error', () => {
  fc.assert(
    fc.property(secrets, fc.nat({ max: 35 }), fc.constantFrom(...'0Z9A'), (secret, at, letter) => {
      const letters = formatRecoveryKey(secret).replaceAll('-', '');
      const swapped =
        letters.slice(0, at) +
        letters
          .slice(at, at + 2)
          .split('')
          .reverse()
          .join('') +
        letters.slice(at + 2);
      const wrong = letters.slice(0, at) + letter + letters.slice(at + 1);
      const short = letters.slice(0, at) + letters.slice(at + 1);
      for (const text of [swapped, wrong, short, letters + letter, '']) {
        if (text !== letters) expect(() => parseRecoveryKey(text)).toThrow(RecoveryKeyMistypedError);
      }
    }),
    // One typing error in a million passes the check group, so the cases stay the same.
    { seed: 1 },
  );
});
