import { expect, test } from 'vitest';
import { readFileText } from './readFileText.ts';

const utf16 = (text: string, littleEndian: boolean) => {
  const bytes = new DataView(new ArrayBuffer(2 + text.length * 2));
  const codes = [0xfeff, ...Array.from(text, (sign) => sign.charCodeAt(0))];
  for (const [at, code] of codes.entries()) bytes.setUint16(at * 2, code, littleEndian);
  return new Uint8Array(bytes.buffer);
};

test('UTF-8 and both kinds of UTF-16 are read as they are', () => {
  const text = 'سارة;Núñez';
  for (const bytes of [new TextEncoder().encode(text), utf16(text, true), utf16(text, false)]) {
    const read = readFileText(bytes);
    expect([read.text.replace('\ufeff', ''), read.note]).toEqual([text, null]);
  }
});

test('old western letters are read, and it is said that they were guessed', () => {
  const read = readFileText(new Uint8Array([0x4e, 0xfa, 0xf1, 0x65, 0x7a]));
  expect(read.text).toBe('Núñez');
  expect(read.note).toMatch(/Look at the names/);
});
