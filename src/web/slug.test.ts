import { expect, test } from 'vitest';
import { makeId, slug } from './slug.ts';

test.each([
  ['Paste, sodium fluoride 0.32 % (1,448 ppm F)', 'paste-sodium-fluoride-0-32-1-448-ppm-f'],
  ['Barniz de flúor', 'barniz-de-fluor'],
  ['  ---  ', ''],
  ['糊', ''],
])('%s', (name, expected) => {
  expect(slug(name)).toBe(expected);
});

test('an id fits an address and the longest id, whatever the name', () => {
  const zeros = (length: number) => new Uint8Array(length);
  const edge = (length: number) => new Uint8Array(length).fill(255);
  expect(makeId('Lot A', zeros)).toBe('lot-a-aaaaa');
  expect(makeId('糊', zeros)).toBe('aaaaa');
  expect(makeId('x'.repeat(59) + ' y'.repeat(50), edge)).toMatch(/^x{59}-[a-z2-9]{5}$/);
});
