const LONGEST_SLUG = 60;
const SUFFIX_LENGTH = 5;
const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';

/** Small letters, digits and hyphens of a name, "" when none is left. */
export function slug(name: string): string {
  const plain = name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_SLUG)
    .replace(/^-+|-+$/g, '');
}

/** An id that says what it is and that nobody else has: the name's letters and a few random ones. */
export function makeId(name: string, random: (length: number) => Uint8Array): string {
  const suffix = [...random(SUFFIX_LENGTH)].map((byte) => LETTERS[byte % LETTERS.length]).join('');
  return [slug(name), suffix].filter(Boolean).join('-');
}

export const randomBytes = (length: number): Uint8Array => crypto.getRandomValues(new Uint8Array(length));
