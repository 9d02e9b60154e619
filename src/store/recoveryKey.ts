import { createHash } from 'node:crypto';
import { RecoveryKeyMistypedError } from './errors.ts';

/** Digits and capital letters without I, L, O and U, which are misread for 1, 1, 0 and V. */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
export const RECOVERY_SECRET_BYTES = 20;
const GROUP = 4;
const SECRET_LETTERS = (RECOVERY_SECRET_BYTES * 8) / 5;

/** Nine groups of four letters to print and keep in a safe; the last group checks the other eight. */
export function formatRecoveryKey(secret: Uint8Array): string {
  if (secret.length !== RECOVERY_SECRET_BYTES) throw new RangeError(`secret must have ${RECOVERY_SECRET_BYTES} bytes: ${secret.length}`);
  const letters = toLetters(secret) + checkGroup(secret);
  return (letters.match(/.{4}/g) ?? []).join('-');
}

/**
 * Takes small letters, spaces and the letters that look like a digit.
 * @throws RecoveryKeyMistypedError when a letter is missing, too many or does not fit the check group
 */
export function parseRecoveryKey(typed: string): Uint8Array {
  const letters = typed.toUpperCase().replaceAll(/[\s-]/g, '').replaceAll('O', '0').replaceAll(/[IL]/g, '1');
  const isWellFormed = letters.length === SECRET_LETTERS + GROUP && [...letters].every((letter) => ALPHABET.includes(letter));
  if (!isWellFormed) throw new RecoveryKeyMistypedError();
  const secret = fromLetters(letters.slice(0, SECRET_LETTERS));
  if (checkGroup(secret) !== letters.slice(SECRET_LETTERS)) throw new RecoveryKeyMistypedError();
  return secret;
}

/** 20 bits: one typing error in a million passes here, and then fails to open the data. */
function checkGroup(secret: Uint8Array): string {
  return toLetters(createHash('sha256').update('ebbline recovery key').update(secret).digest().subarray(0, 5)).slice(0, GROUP);
}

/** Five bits to a letter; the length in bytes must be a multiple of five. */
function toLetters(bytes: Uint8Array): string {
  let letters = '';
  let bits = 0;
  let held = 0;
  for (const byte of bytes) {
    held = (held << 8) | byte;
    bits += 8;
    while (bits >= 5) {
      bits -= 5;
      letters += ALPHABET[(held >> bits) & 31];
      held &= (1 << bits) - 1;
    }
  }
  return letters;
}

function fromLetters(letters: string): Uint8Array {
  const bytes: number[] = [];
  let bits = 0;
  let held = 0;
  for (const letter of letters) {
    held = (held << 5) | ALPHABET.indexOf(letter);
    bits += 5;
    if (bits >= 8) {
      bits -= 8;
      bytes.push(held >> bits);
      held &= (1 << bits) - 1;
    }
  }
  return Uint8Array.from(bytes);
}
