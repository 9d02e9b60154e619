/** Letters that no decomposition takes apart. */
const PLAIN: Readonly<Record<string, string>> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ħ: 'h', ı: 'i' };

/**
 * Lower-case words without accents, so that "Núñez-O’Neil" is found by "nunez", "oneil" or "Ñunez". The same function makes the
 * stored key and the words of a search.
 */
export function searchKey(names: string): string {
  const plain = names
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}|['’ʼ`´]/gu, '')
    .replaceAll(/[ßæœøłđðþħı]/g, (letter) => PLAIN[letter] ?? letter);
  return plain.match(/[\p{L}\p{N}]+/gu)?.join(' ') ?? '';
}
