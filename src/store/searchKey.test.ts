import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchKey } from './searchKey.ts';

test.each([
  ['Ana Núñez-O’Neil', 'ana nunez oneil'],
  ["D'Angelo  Müller", 'dangelo muller'],
  ['Søren Ærø Łukasz Weiß', 'soren aero lukasz weiss'],
  ['İpek Işık', 'ipek isik'],
  ['Ａｎａ ２', 'ana 2'],
  ['李 小龙', '李 小龙'],
  ['100% _a_', '100 a'],
  ['--', ''],
])('%s is found as %s', (name, key) => expect(searchKey(name)).toBe(key));

test('the key of a key is itself, and it never holds a sign that `like` reads', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme' }), (name) => {
      const key = searchKey(name);
      expect(searchKey(key)).toBe(key);
      expect(key).not.toMatch(/[%_\\]|^ | $| {2}/);
    }),
  );
});
