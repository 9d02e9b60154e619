import fc from 'fast-check';
import { expect, test } from 'vitest';
import { guardFormula, withoutGuard } from './formulaGuard.ts';
import { parseCsv } from './parseCsv.ts';
import { writeCsv } from './writeCsv.ts';

/** Half of the texts begin like a formula, or with the apostrophe that guards one. */
const text = fc.oneof(
  fc
    .tuple(fc.constantFrom('=', '+', '-', '@', '\t', '\r', '\n', '＝', "'", "'=", "''-", ' ', '"'), fc.string())
    .map((parts) => parts.join('')),
  fc.string(),
);

test('whatever is written is read back, to the letter', () => {
  fc.assert(
    fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }), (rows) => {
      const written = rows.map((row, i) => [`row ${i}`, ...row]);
      const read = parseCsv(writeCsv(written), ',');
      expect('lines' in read && read.lines.map(({ cells }) => cells.map(withoutGuard))).toEqual(written);
    }),
  );
});

test('no text begins as a spreadsheet begins a formula, and the guard takes nothing else away', () => {
  fc.assert(
    fc.property(text, (words) => {
      expect(guardFormula(words)).not.toMatch(/^[=+\-@＝＋－＠\t\r\n]/);
      expect(withoutGuard(guardFormula(words))).toBe(words);
    }),
  );
  expect(["'tis dry", "o'clock", ''].map(guardFormula)).toEqual(["'tis dry", "o'clock", '']);
});

test('numbers stand bare and may be negative; what is missing is empty', () => {
  expect(writeCsv([['sd'], [-1.5, '-1.5', null, undefined, 'a "b"']])).toBe('\ufeff"sd"\r\n-1.5,"\'-1.5",,,"a ""b"""\r\n');
});
