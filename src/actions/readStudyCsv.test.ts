import { expect, test } from 'vitest';
import { readStudyCsv } from './readStudyCsv.ts';

test.each([
  ['nothing', '', /^there is nothing in it$/],
  ['no number', 'run,rlu\n', /no reading under the first line/],
  ['no name of a column', '1,5150\n2,5160', /must name the columns run and rlu/],
  ['a column missing', 'run,operator\n1,Una', /must name the columns run and rlu/],
  ['a quotation mark alone', 'run,rlu\n1,5"150', /quotation mark/],
  ['a zero for the first swab', 'run,rlu\n0,5150', /^run: "0" is not a number of the run sheet/],
  ['a comma inside a number between commas', 'run,rlu\n1,60,000', /^3 columns where the first line names 2; a comma inside a number/],
  ['decimals, which may be thousands', 'run;rlu\n1;50.000', /^rlu: "50.000" is not a whole number/],
  ['below zero', 'run,rlu\n1,-5', /^rlu: "-5" is not a whole number/],
  ['not a number', 'run,rlu\n1,NaN', /^rlu: "NaN" is not a whole number/],
  ['no number at all', 'run,rlu,lot\n1,,Birch', /^rlu: "" is not a whole number/],
])('%s: one problem, and nothing is taken', (_what, text, says) => {
  expect(readStudyCsv(text)).toEqual({ lines: [], problems: [{ line: expect.any(Number), message: expect.stringMatching(says) }] });
});

test.each([
  ['5150', 5150, 'exact'],
  ['5\u00a0150', 5150, 'exact'],
  ['"5,150"', 5150, 'exact'],
  ['<40', 40, 'at-most'],
  ['> 60000', 60_000, 'at-least'],
])('%s is read', (typed, rlu, bound) => {
  expect(readStudyCsv(`\ufeffRLU,Run\u00a0,note\n${typed},1,\n`)).toMatchObject({ lines: [{ line: 2, run: 0, rlu, bound }], problems: [] });
});
